"""What is asked before a find goes into the census, and the specimens it becomes."""

from fieldid.census import cells
from fieldid.census.specimens import Specimen
from fieldid.engine.find import Find
from fieldid.engine.guide import Guide
from fieldid.errors import CensusError, FieldidError
from fieldid.guides.refusals import Refusal
from fieldid.inbox.looking import Kept
from fieldid.workbench.inbox.forms import AcceptForm
from fieldid.workbench.inbox.judged import Judged

STRAY = 0.5
"""Members that are more probably strays are not chosen beforehand."""


def accept_form(here: Kept, judged: Judged) -> AcceptForm:
    """The form with what is known of the find."""
    form = AcceptForm(prefix="accept")
    members = judged.verdict.members if judged.verdict else ()
    strays = [each.member for each in members if each.stray > STRAY]
    assert judged.guide is not None
    form.offer(here, judged.guide, strays)
    return form


def specimens_of(form: AcceptForm, find: Find, guide: Guide) -> tuple[Specimen, ...]:
    """What goes into the census; nothing, and errors in the form, if it cannot."""
    years, wrong = cells.years(str(form.years.data).strip(), guide)
    note = str(form.note.data or "").strip()
    (how, note), unconfirmed = cells.how(f"{form.how.data}: {note}")
    items = find.items
    if form.members is not None:
        items = tuple(item for item in items if item.member in form.members.data)
        if not items:
            form.members.errors = ["Choose one member at least, or refuse the find."]
    if wrong:
        form.years.errors = [_said(wrong)]
    if unconfirmed:
        form.note.errors = [_said(unconfirmed)]
    if form.errors or wrong or unconfirmed:
        return ()
    name = str(form.name.data).strip()
    return tuple(
        Specimen(
            name if len(items) == 1 else f"{name}, {item.member}",
            years,
            how,
            note,
            item,
        )
        for item in items
    )


def put(form: AcceptForm, error: FieldidError) -> None:
    """Puts what the census, or the inbox, refuses to the field that it is about."""
    fields = {"model_year": form.years, "how": form.how}
    problems = error.problems if isinstance(error, CensusError) else ()
    for problem in problems:
        field = fields.get(problem.key, form.name)
        where = f" (line {problem.line} of the census)" if problem.line else ""
        said = f"{problem.key}: {problem.wrong}; would be right: {problem.right}{where}"
        field.errors = [*field.errors, said]
    if not problems:
        form.name.errors = [*form.name.errors, str(error)]


def _said(told: Refusal) -> str:
    return f"{told.wrong}; would be right: {told.right}"
