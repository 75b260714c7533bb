"""What may be said of a shape, in words for authors."""

from fieldid.draw.params import Check, Number, OneOf, Several, Stamped, Words


def words(check: Check) -> str:
    """What a parameter may be.

    >>> words(Several(OneOf(("green", "navy")), most=5))
    'with commas, up to 5 of: green, navy'
    """
    match check:
        case OneOf():
            return ", ".join(map(str, check.words))
        case Number():
            return f"a number from {check.low:g} to {check.high:g}"
        case Stamped():
            return f"stamped letters, up to {check.most}"
        case Words():
            return f"words, up to {check.most} letters"
        case Several(each=Several()):
            return 'lists in brackets, as [["A", "17"], ["B"]]'
        case Several():
            return f"with commas, up to {check.most} of: {words(check.each)}"
    return "anything"
