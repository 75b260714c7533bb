"""Audits in the background: one at a time, how far it is, and what the last found."""

from dataclasses import dataclass
from threading import Event, Lock, Thread

from flask import current_app

from fieldid.audit.report import Audit, report
from fieldid.audit.run import Run

BROKEN = (
    "The audit could not be finished, by a mistake of fieldid and not of yours: "
    "the terminal where “fieldid serve” runs says what happened."
)


@dataclass(frozen=True, slots=True)
class Finished:
    """What an audit found, and the tag of the guide's file that it tried."""

    tag: str
    audit: Audit | None
    say: str = ""


class Job:
    """An audit that is going on."""

    def __init__(self, name: str, tag: str, run: Run) -> None:
        self.name = name
        self.tag = tag
        self.run = run
        self.stop = Event()

    @property
    def percent(self) -> int:
        """How much of it is done."""
        return 100 * self.run.done // self.run.total


class Auditor:
    """The audits of a workbench: what it found is gone when the server stops."""

    def __init__(self) -> None:
        self._lock = Lock()
        self._found: dict[str, Finished] = {}
        self._thread: Thread | None = None
        self.job: Job | None = None

    def begin(self, name: str, tag: str, run: Run) -> bool:
        """Begins an audit of a guide; False if one goes on already."""
        with self._lock:
            if self.job:
                return False
            self.job = Job(name, tag, run)
            self._thread = Thread(
                target=self._work, args=(self.job,), name="audit", daemon=True
            )
            self._thread.start()
        return True

    def stop(self, name: str) -> None:
        """Ends the audit of a guide, if it goes on; what was found so far is kept."""
        job = self.job
        if job and job.name == name:
            job.stop.set()

    def found(self, name: str) -> Finished | None:
        """What the last audit of the guide found."""
        return self._found.get(name)

    def wait(self) -> None:
        """Until nothing goes on any more."""
        if self._thread:
            self._thread.join()

    def _work(self, job: Job) -> None:
        found = Finished(job.tag, None, BROKEN)
        try:
            for _ in job.run.steps():
                if job.stop.is_set():
                    break
            found = Finished(job.tag, report(job.run))
        finally:
            with self._lock:
                self._found[job.name] = found
                self.job = None


def auditor() -> Auditor:
    """The audits of the workbench that answers the request."""
    found: Auditor = current_app.extensions["auditor"]
    return found
