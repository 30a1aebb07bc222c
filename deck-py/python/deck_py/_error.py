"""What is raised when input cannot be worked on."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing that is wrong with the input.

    Examples
    --------
    >>> import deck_py
    >>> try:
    ...     deck_py.beam([16, -1], [])
    ... except deck_py.DeckError as error:
    ...     fault = error.errors[0]
    >>> fault.pointer, fault.value, fault.kind
    ('/spans/1', '-1', 'OutOfRange')
    """

    pointer: str
    """JSON pointer (RFC 6901) of the field; empty: the whole of it."""
    value: str
    """The value as it was given."""
    message: str
    """What is wrong, as a sentence."""
    accepted: str
    """What would be accepted, as a sentence."""
    kind: str
    """What sort of fault it is, such as ``LengthUnreadable``."""
    code: int
    """Its number: the status of the C functions."""


class DeckError(ValueError):
    """Input that cannot be worked on, with everything that is wrong with it.

    Examples
    --------
    >>> import deck_py
    >>> try:
    ...     deck_py.beam([16, -1], [], stiffness=0)
    ... except deck_py.DeckError as error:
    ...     print([fault.pointer for fault in error.errors], error.pointer)
    ['/spans/1', '/stiffness'] /spans/1
    """

    def __init__(self, text: str, errors: tuple[Fault, ...]) -> None:
        super().__init__(text, errors)
        self._text = text
        self._errors = errors

    @property
    def errors(self) -> tuple[Fault, ...]:
        """Everything that is wrong, in the order in which it stands in the input. Never empty."""
        return self._errors

    @property
    def pointer(self) -> str:
        """The first fault's pointer."""
        return self._errors[0].pointer

    @property
    def message(self) -> str:
        """The first fault's message."""
        return self._errors[0].message

    def __str__(self) -> str:
        return self._text


# Both are known by their public name, in tracebacks and in pickles.
Fault.__module__ = DeckError.__module__ = "deck_py"
