"""Forms: fields, labels, hints; what may stand in them is said by fieldid.guides."""

from typing import Any

# Neither library says its types.
from flask_wtf import FlaskForm  # type: ignore[import-untyped]
from flask_wtf.file import FileField  # type: ignore[import-untyped]
from wtforms import TextAreaField  # type: ignore[import-untyped]
from wtforms.validators import ValidationError  # type: ignore[import-untyped]


class FindForm(FlaskForm):  # type: ignore[misc]  # for the same reason
    """One find, as a file or as text."""

    file = FileField("The find's file", description="Ends in .json, as the app saves.")
    text = TextAreaField(
        "Or its text",
        description="The whole text, from the first { to the last }.",
        render_kw={"rows": 10, "spellcheck": "false", "autocomplete": "off"},
    )

    def validate_text(self, text: TextAreaField) -> None:
        """One of the two is required, and one is enough."""
        written = bool(text.data and text.data.strip())
        if self.file.data and written:
            raise ValidationError("Both are filled in: keep the file or the text.")
        if not self.file.data and not written:
            raise ValidationError("Nothing came: choose a file or paste its text.")

    @property
    def given(self) -> Any:
        """The field that is filled in."""
        return self.file if self.file.data else self.text

    @property
    def name(self) -> str:
        """What to call the find in a sentence."""
        return str(self.file.data.filename) if self.file.data else "The text"

    def content(self) -> bytes:
        """What was given, as sent."""
        if self.file.data:
            return bytes(self.file.data.read())
        return str(self.text.data).encode()

    def refuse(self, sentence: str) -> None:
        """Puts the sentence to the field that is filled in."""
        self.given.errors = [*self.given.errors, sentence]
