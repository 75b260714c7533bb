"""The dark colours for pages that follow the system: those of static/css/tokens.css
once more, under another name and only where the system asks for dark.
"""

import re

TOKENS = "css/tokens.css"
FOLLOWING = "system"
"""What such a page says of its theme until somebody chooses light or dark."""


def following(tokens: str) -> str:
    """Each rule of the dark theme for a page that follows the system.

    >>> print(following('@media screen { [data-theme="dark"] { --ink: #fff; } }'))
    @media screen and (prefers-color-scheme: dark) {
      [data-theme="system"] { --ink: #fff; }
    }
    <BLANKLINE>
    """
    return "\n".join(
        f"@media {media.strip()} and (prefers-color-scheme: dark) {{\n"
        f'  [data-theme="{FOLLOWING}"] {{{colours}}}\n}}\n'
        for media, colours in _DARK.findall(tokens)
    )


_DARK = re.compile(r'@media ([^{]*)\{\s*\[data-theme="dark"\]\s*\{([^{}]*)\}\s*\}')
