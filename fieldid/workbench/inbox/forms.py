"""The forms of the inbox: fields, labels, hints; the law is that of the census."""

from collections.abc import Sequence

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from flask_wtf.file import MultipleFileField  # type: ignore[import-untyped]
from wtforms import (  # type: ignore[import-untyped]
    SelectChoice,
    SelectField,
    SelectMultipleField,
    StringField,
    TextAreaField,
)
from wtforms.validators import DataRequired, Length  # type: ignore[import-untyped]
from wtforms.widgets import CheckboxInput, ListWidget  # type: ignore[import-untyped]

from fieldid.census.specimens import HOWS
from fieldid.engine.guide import Guide
from fieldid.engine.words import called, capital
from fieldid.inbox.choice import named
from fieldid.inbox.looking import Kept

LONGEST = 200
LONGEST_REASON = 1000
MOST_MEGABYTES = 200


class DropForm(FlaskForm):  # type: ignore[misc]  # for the same reason
    """Files of finds, as phones save them."""

    files = MultipleFileField(
        "Files of finds",
        description=(
            "Drop them here, or choose them: .zip or .json, as the app saves them "
            "under “File of all finds”, or one find as it saves it under its verdict; "
            f"together at most {MOST_MEGABYTES} MB."
        ),
        render_kw={"accept": ".zip,.json,application/zip,application/json"},
    )


class AcceptForm(FlaskForm):  # type: ignore[misc]
    """What a census says of a specimen beside its readings."""

    name = StringField(
        "What the census calls it",
        description="Each specimen has a name of its own. The census may be handed on.",
        validators=[
            DataRequired("Give it a name."),
            Length(max=LONGEST, message=f"At most {LONGEST} characters."),
        ],
    )
    years = StringField(
        "Model year",
        description=(
            "As 1952; as 1951 0.7; 1952 0.3 where it may be of either; "
            "? if nothing but the readings tells it."
        ),
        validators=[
            DataRequired("Say the model year, or ? if nothing but the readings does."),
            Length(max=LONGEST, message=f"At most {LONGEST} characters."),
        ],
        render_kw={"autocomplete": "off"},
    )
    how = SelectField(
        "How it was confirmed",
        description="By something else than the readings.",
        choices=[
            SelectChoice("", "Choose"),
            *(SelectChoice(how, capital(how)) for how in HOWS),
        ],
        validators=[DataRequired("Choose how it was confirmed.")],
    )
    note = StringField(
        "In words",
        description="As: receipt of May 1953, seen. Needed with “other”.",
        validators=[Length(max=LONGEST, message=f"At most {LONGEST} characters.")],
    )
    members = SelectMultipleField(
        "Members that are of this year",
        description="Leave out the strays. Each becomes a specimen.",
        widget=ListWidget(prefix_label=False),
        option_widget=CheckboxInput(),
    )

    def offer(self, kept: Kept, guide: Guide, strays: Sequence[str]) -> None:
        """Puts in what is known of the find; of a set, its members to choose from."""
        items = kept.entry.find["items"]
        if len(items) == 1:
            del self.members
        else:
            ids = [item["member"] for item in items]
            self.members.choices = [
                SelectChoice(id, capital(called(guide, id))) for id in ids
            ]
            if not self.is_submitted():
                self.members.data = [id for id in ids if id not in strays]
        if not self.is_submitted():
            self.name.data = named(kept.number, kept.entry)


class RefuseForm(FlaskForm):  # type: ignore[misc]
    """Why a find is refused."""

    reason = TextAreaField(
        "Why it is refused",
        description="Kept beside the find.",
        validators=[
            DataRequired("Say why, so that it is known later."),
            Length(max=LONGEST_REASON, message=f"At most {LONGEST_REASON} characters."),
        ],
        render_kw={"rows": 3},
    )
