"""An author at the workbench: pages opened, forms filled in and sent, as a browser
without scripts does it.
"""

from pathlib import Path

from bs4 import BeautifulSoup, Tag

from workbenches import ROOT, bench


class Desk:
    """A folder of guides, and the page that lies open."""

    def __init__(self, rules: Path) -> None:
        self.rules = rules
        self.app = bench(rules)
        self.client = self.app.test_client()
        self.page = BeautifulSoup("", "html.parser")
        self.status = 0
        self.ticked: dict[str, list[str]] = {}

    def text(self, guide: str) -> str:
        """The file as it lies there."""
        return (self.rules / f"{guide}.toml").read_text()

    def write(self, guide: str, text: str) -> None:
        """Somebody changes the file."""
        (self.rules / f"{guide}.toml").write_text(text)

    def open(self, address: str) -> "Desk":
        """The page at an address below the workbench."""
        return self._take(
            self.client.get(address, base_url=ROOT, follow_redirects=True)
        )

    def send(self, do: str = "save", form: int = 0, **said: str) -> "Desk":
        """Sends the page's form with some fields changed; `__` stands for a point."""
        fields = self.fields(form)
        # Of radio buttons none may be chosen yet.
        names = [each["name"] for each in self.form(form).select("[name]")]
        for name, value in said.items():
            name = name.replace("__", ".")
            name = f"at.{name}" if f"at.{name}" in names else name
            assert name in names, (name, names)
            fields[name] = value
        where = self.form(form).get("action") or self.address
        sent = self.client.post(
            where.removeprefix("/workbench"),
            data={**fields, **self.ticked, "do": do},
            base_url=ROOT,
            follow_redirects=True,
        )
        return self._take(sent)

    def tick(self, name: str, *values: str) -> "Desk":
        """Of the boxes of this name, which are sent; a liar sends others as well."""
        self.ticked = {name: list(values)}
        return self

    def place_of(self, css: str) -> int:
        """The place of the first form in which something is."""
        forms = self.page.select("main form")
        return next(i for i, form in enumerate(forms) if form.select(css))

    def form(self, place: int = 0) -> Tag:
        """The form of the page at this place that posts."""
        return self.page.select("main form")[place]

    def fields(self, place: int = 0) -> dict[str, str]:
        """What a browser would send of a form as it stands."""
        found = {}
        for input in self.form(place).select("input, textarea, select"):
            name = input.get("name")
            if name and not (
                input.get("type") in ("radio", "checkbox")
                and "checked" not in input.attrs
            ):
                found[name] = _value(input)
        return found

    def errors(self) -> dict[str, str]:
        """Each field with a mistake, by its id, and what is told there."""
        told = self.page.select(".field__error")
        return {each["id"].removesuffix("-error"): each.text.strip() for each in told}

    def said(self, css: str = "main") -> str:
        """The words of a part of the page, with single blanks."""
        return " ".join(
            " ".join(each.get_text(" ") for each in self.page.select(css)).split()
        )

    def links(self) -> list[str]:
        """Where the page leads to within the workbench."""
        found = [
            each["href"].split("#")[0] for each in self.page.select("main a[href]")
        ]
        return list(dict.fromkeys(a.removeprefix("/workbench") for a in found if a))

    def _take(self, answer) -> "Desk":
        self.status = answer.status_code
        self.ticked = {}
        self.page = BeautifulSoup(answer.text, "html.parser")
        self.address = answer.request.full_path.rstrip("?")
        assert self.status < 500, answer.text
        return self


def _value(input: Tag) -> str:
    if input.name == "textarea":
        # The first end of line after the tag is none of the text.
        text = input.text.replace("\r\n", "\n").removeprefix("\n")
        return text.replace("\n", "\r\n")
    if input.name == "select":
        chosen = input.select_one("option[selected]") or input.select_one("option")
        return chosen["value"] if chosen else ""
    return input.get("value", "")
