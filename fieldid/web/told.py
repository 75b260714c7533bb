"""What is told beside the engine's own words wherever a verdict is shown."""

from fieldid.engine.find import PartState, Verdict
from fieldid.engine.saying import UNSEEN

ALWAYS = (
    "This is an estimate from what was read, not an authentication or an appraisal.",
    "For insurance, an estate, tax, customs or a dispute, ask a qualified appraiser.",
)
"""What no guide needs to say, because it holds for every verdict."""


def told_parts(verdict: Verdict) -> tuple[PartState, ...]:
    """The state of each part; under a guide that brackets only what speaks against
    one.
    """
    return tuple(
        state
        for state in verdict.replaced
        if not verdict.range or not state.say.startswith(("original", UNSEEN))
    )
