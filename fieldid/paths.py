"""The only module that knows where rules/, static/ and templates/ lie."""

from pathlib import Path

_PACKAGE = Path(__file__).parent
# A checkout keeps the three folders beside the package; the wheel inside it.
_ROOT = _PACKAGE.parent if (_PACKAGE.parent / "rules").is_dir() else _PACKAGE

RULES = _ROOT / "rules"
STATIC = _ROOT / "static"
TEMPLATES = _ROOT / "templates"
