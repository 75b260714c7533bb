"""A new guide from a few answers: at once a whole guide that can be judged with."""

from collections.abc import Container, Mapping
from datetime import date
from typing import Any

from flask import flash, redirect, render_template, url_for
from flask.typing import ResponseReturnValue

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from wtforms import (  # type: ignore[import-untyped]
    RadioField,
    SelectChoice,
    StringField,
    TextAreaField,
)
from wtforms.validators import DataRequired, Length  # type: ignore[import-untyped]

from fieldid.errors import TakenError, WriteError
from fieldid.guides.document import created
from fieldid.guides.refusals import Path
from fieldid.guides.written import pair, section
from fieldid.workbench.fields.drawn import object_lit
from fieldid.workbench.fields.entries import DRAWINGS
from fieldid.workbench.fields.kinds import YEARS, first_year, number, plain
from fieldid.workbench.forms.form import pick_drawn, slug
from fieldid.workbench.forms.naming import TWICE, is_alike
from fieldid.workbench.forms.spots import spot_for
from fieldid.workbench.gate.keeping import REFILLED, is_from_before, refilled
from fieldid.workbench.place import place
from fieldid.workbench.text.drafts import Draft, draft

MOST_APART = 100
"""So many model years get a table each; more are one run of plain years."""
NEEDED = DataRequired("Please fill this in.")
SHORT = Length(max=500, message="At most 500 letters.")


def _line(label: str, hint: str = "", *, needed: bool = True) -> Any:
    checks = [NEEDED, SHORT] if needed else [SHORT]
    return StringField(
        label, checks, description=hint, render_kw={"autocomplete": "off"}
    )


class NewForm(FlaskForm):  # type: ignore[misc]  # for the same reason
    """The few answers."""

    title = _line("Title", "What the line is called, as: Ember Lapwing irons.")
    maker = _line("Maker", "May be left empty.", needed=False)
    kind = _line("Kind of object", "As: golf irons.")
    drawing = pick_drawn(
        "Drawing",
        DRAWINGS({}),
        drawn=object_lit,
        default=DRAWINGS({})[0][0],
        description="The whole object, as the app shows it. Take the nearest.",
    )
    fiction = RadioField(
        "Is the line real?",
        choices=[
            SelectChoice("real", "Real"),
            SelectChoice("invented", "Invented, and the screens say so"),
        ],
        default="real",
    )
    first = _line("First model year", "As 1951.")
    last = _line("Last model year", "As 1955.")
    about = TextAreaField(
        "About it",
        [NEEDED, Length(max=20_000)],
        description="A few sentences for somebody who does not know the line.",
        render_kw={"rows": 3},
    )
    source = _line("Source", "Where your knowledge comes from.")
    part_one = _line("One part", "A part that can be replaced by itself, as: head.")
    part_two = _line("Another part", "As: grip.")
    ask = _line(
        "A first question", "What tells one year from the next, on the first part."
    )
    answer_one = _line("One answer", "As: two green rings.")
    years_one = _line("Model years of the one", "As 1951-1952.")
    answer_two = _line("Another answer", "As: one navy ring.")
    years_two = _line("Model years of the other", "As 1953-1955.")


@refilled
def new() -> ResponseReturnValue:
    """The few questions, and the guide that the answers make."""
    form = NewForm()
    if not form.is_submitted():
        return _page(form, [], 200)
    if is_from_before():
        return _page(form, [REFILLED], 409)
    form.validate()
    said = {key: plain(str(value or "")) for key, value in form.data.items()}
    name = slug(said["title"], list(place().guides()))
    path = place().rules / f"{name}.toml"
    made = draft(text(said, name), path)
    left = _refuse(form, made, text_places(said))
    if said["part_one"] and is_alike(said["part_one"], said["part_two"]):
        form.part_two.errors = [TWICE]
    if form.errors or left:
        return _page(form, left, 400)
    try:
        created(path, made.text)
    except (TakenError, WriteError) as error:
        return _page(form, [f"{error}."], 409)
    flash("Your guide is there, and can be judged with. Now add what else you know.")
    return redirect(url_for("guides.guide", guide=name))


def text(said: Mapping[str, str], name: str) -> str:
    """The guide that the answers make."""
    head: dict[str, Any] = {"format": 1, "id": name, "title": said["title"]}
    if said["maker"]:
        head["maker"] = said["maker"]
    head["kind"] = said["kind"]
    if said["fiction"] == "invented":
        head["fiction"] = True
    head |= {"about": said["about"], "source": said["source"]}
    head |= {"updated": date.today(), "drawing": said["drawing"]}
    tables = [("model_year", each) for each in _years(said)]
    tables += [("part", each) for each in _parts(said)]
    tables.append(("clue", _clue(said)))
    written = "".join(pair(key, value) for key, value in head.items())
    return "\n".join([written, *(section((key, 0), each) for key, each in tables)])


def text_places(said: Mapping[str, str]) -> dict[Path, str]:
    """Which answer stands at which path of the guide."""
    last = len(_years(said)) - 1
    years: dict[Path, str] = {("model_year", 0): "first", ("model_year", last): "last"}
    return {
        **{(key,): key for key in ("title", "maker", "kind", "drawing", "about")},
        ("source",): "source",
        ("id",): "title",
        ("model_year",): "last",
        **years,
        ("part", 0): "part_one",
        ("part", 1): "part_two",
        ("clue", 0): "ask",
        ("clue", 0, "option", 0): "answer_one",
        ("clue", 0, "option", 0, "seen"): "years_one",
        ("clue", 0, "option", 1): "answer_two",
        ("clue", 0, "option", 1, "seen"): "years_two",
    }


def _years(said: Mapping[str, str]) -> list[dict[str, Any]]:
    first, last = number(said["first"]), number(said["last"])
    if isinstance(first, int) and isinstance(last, int):
        if 0 < last - first < MOST_APART:
            return [{"year": year} for year in range(first, last + 1)]
        return [{"years": f"{first}-{last}"}] if last != first else [{"year": first}]
    # The schema says what a year is, of the one that is none.
    return [{"year": first}, {"year": last}]


def _parts(said: Mapping[str, str]) -> list[dict[str, Any]]:
    one = slug(said["part_one"])
    return [
        {"id": one, "name": said["part_one"]},
        {"id": slug(said["part_two"], [one]), "name": said["part_two"]},
    ]


def _clue(said: Mapping[str, str]) -> dict[str, Any]:
    part = slug(said["part_one"])
    clue: dict[str, Any] = {"id": "first-look", "part": part, "kind": "choice"}
    clue["ask"] = said["ask"]
    if spot := spot_for(said, part):
        clue["spot"] = spot
    one = slug(said["answer_one"])
    two = slug(said["answer_two"], [one])
    clue["option"] = [
        {"id": one, "label": said["answer_one"], "seen": _seen(said["years_one"])},
        {"id": two, "label": said["answer_two"], "seen": _seen(said["years_two"])},
    ]
    return clue


def _seen(years: str) -> list[dict[str, Any]]:
    return [{"years": YEARS.read(years)}]


def _refuse(form: NewForm, made: Draft, places: Mapping[Path, str]) -> list[str]:
    """Puts one mistake to each answer that has any; returns what belongs to none."""
    left = []
    told: dict[str, str] = {}
    for trouble in made.troubles:
        path = (*trouble.home, *trouble.rest)
        cuts = [path[:n] for n in range(len(path), 0, -1) if path[:n] in places]
        if cuts:
            told.setdefault(places[cuts[0]], trouble.plain)
        else:
            left.append(trouble.plain)
    wrong = {*told, *form.errors}
    for key, sentence in told.items():
        if not form[key].errors and not _follows(form, key, wrong):
            form[key].errors = [sentence]
    return left


def _follows(form: NewForm, key: str, wrong: Container[str]) -> bool:
    """Whether an answer's years, which can be read, may only not fit those of the line
    because these are wrong.
    """
    if key not in ("years_one", "years_two"):
        return False
    years = YEARS.read(plain(form[key].data or ""))
    return first_year(years) is not None and ("first" in wrong or "last" in wrong)


def _page(form: NewForm, left: list[str], status: int) -> ResponseReturnValue:
    wrong = [("", sentence) for sentence in left]
    wrong += [
        (f"#{each.id}", f"{each.label.text}: {e}") for each in form for e in each.errors
    ]
    return render_template("workbench/new.html", form=form, wrong=wrong), status
