"""Many named definitions at once: each is a quantity or an expression on other names.

Gives the values, what each rests on, and the faults: unknown names, rings, kinds that don't fit. A definition
that rests on a faulty one has neither value nor fault of its own: the cause is reported once. Linear, without
recursion.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field

from builder.errors import TextFault
from builder.model.expression import Expression, name_remedy
from builder.model.near_names import near
from builder.model.quantity import Quantity

Resolved = tuple[dict[str, Quantity], dict[str, frozenset[str]], list["ExpressionFault"]]


@dataclass(frozen=True, slots=True)
class ExpressionFault:
    """An expression that has no value.

    name   : the definition it stands in
    offset : place in its text
    about  : the names it concerns, existing or missing, the near name offered too; a ring's members in order
    """

    name: str
    message: str
    offset: int
    remedy: str
    about: tuple[str, ...]


def resolve_all(
    definitions: Mapping[str, Quantity | Expression],
    external: Callable[[str], Quantity | None],
    dimension_of: Callable[[str], str],
    full_name: Callable[[str, str], str] = lambda definition, name: name,
    known: Iterable[str] = (),
) -> Resolved:
    """Values of all definitions that have one; the base names each rests on, itself if typed; the faults.

    definitions  : full name to quantity or expression
    external     : the quantity of a name that is not a definition, None if there is none
    dimension_of : the dimension that a definition asks for
    full_name    : (definition, name typed in it) to the full name meant; default the name itself
    known        : names that `external` knows, to offer near ones

    Values and supports stand in an order in which each follows what it rests on. A support is transitive.
    """
    work = _Work(definitions, external, dimension_of, full_name, tuple(known))
    work.link()
    work.evaluate_in_order()
    work.report_rings()
    order = {name: index for index, name in enumerate(definitions)}
    work.faults.sort(key=lambda fault: (order[fault.name], fault.offset))
    return work.values, work.support, work.faults


@dataclass(slots=True)
class _Work:
    definitions: Mapping[str, Quantity | Expression]
    external: Callable[[str], Quantity | None]
    dimension_of: Callable[[str], str]
    full_name: Callable[[str, str], str]
    known: tuple[str, ...]
    values: dict[str, Quantity] = field(default_factory=dict)
    support: dict[str, frozenset[str]] = field(default_factory=dict)
    faults: list[ExpressionFault] = field(default_factory=list)
    outside: dict[str, Quantity] = field(default_factory=dict)
    rests_on: dict[str, list[str]] = field(default_factory=dict)
    users: dict[str, list[str]] = field(default_factory=dict)
    bad: set[str] = field(default_factory=set)
    waiting: dict[str, int] = field(default_factory=dict)

    def link(self) -> None:
        """Turn the names typed into full names, and note who waits for whom."""
        for definition, content in self.definitions.items():
            self.rests_on[definition] = []
            if isinstance(content, Expression):
                self._link_names(definition, content)
            inner = [name for name in self.rests_on[definition] if name in self.definitions]
            self.waiting[definition] = len(inner)
            for name in inner:
                self.users.setdefault(name, []).append(definition)

    def _link_names(self, definition: str, expression: Expression) -> None:
        seen: set[str] = set()
        for typed in expression.names:
            name = self.full_name(definition, typed.text)
            if name in seen:
                continue
            seen.add(name)
            if name not in self.definitions and name not in self.outside:
                found = self.external(name)
                if found is None:
                    self._unknown(definition, typed.text, name, typed.offset)
                    continue
                self.outside[name] = found
            self.rests_on[definition].append(name)

    def _unknown(self, definition: str, typed: str, name: str, offset: int) -> None:
        close = near(name, (*self.definitions, *self.known)) or near(typed, (*self.definitions, *self.known))
        remedy = f"Write {close[0]}" if close else name_remedy(typed)
        self.faults.append(
            ExpressionFault(definition, f"unknown name {typed}", offset, remedy, (name, *close))
        )
        self.bad.add(definition)

    def evaluate_in_order(self) -> None:
        """Evaluate each once all it rests on is done; what is left waiting is in a ring or behind one."""
        ready = deque(name for name, count in self.waiting.items() if count == 0)
        while ready:
            name = ready.popleft()
            self._evaluate(name)
            del self.waiting[name]
            for user in self.users.get(name, ()):
                self.waiting[user] -= 1
                if self.waiting[user] == 0:
                    ready.append(user)

    def _evaluate(self, name: str) -> None:
        content = self.definitions[name]
        if isinstance(content, Quantity):
            self.values[name], self.support[name] = content, frozenset({name})
            return
        if name in self.bad or not self.bad.isdisjoint(self.rests_on[name]):
            self.bad.add(name)
            return
        try:
            value = content.evaluate(
                lambda typed: self._value(self.full_name(name, typed)), self.dimension_of(name)
            )
        except TextFault as fault:
            about = tuple(self.rests_on[name])
            self.faults.append(
                ExpressionFault(name, fault.message, fault.offset, fault.remedy, (name, *about))
            )
            self.bad.add(name)
            return
        self.values[name] = value
        self.support[name] = frozenset().union(
            *(self.support.get(base, {base}) for base in self.rests_on[name])
        )

    def _value(self, name: str) -> Quantity:
        return self.values[name] if name in self.values else self.outside[name]

    def report_rings(self) -> None:
        """Each name left waits for another that is left, so walking on always ends in a ring."""
        done: set[str] = set()
        for start in self.waiting:
            walk: dict[str, None] = {}
            name = start
            while name not in done and name not in walk:
                walk[name] = None
                name = next(base for base in self.rests_on[name] if base in self.waiting)
            if name in walk:
                self._ring(list(walk)[list(walk).index(name) :])
            done.update(walk)

    def _ring(self, members: list[str]) -> None:
        first = members[0]
        content = self.definitions[first]
        after = members[1] if len(members) > 1 else first
        names = content.names if isinstance(content, Expression) else ()
        offset = next((name.offset for name in names if self.full_name(first, name.text) == after), 0)
        message = f"a ring: {' → '.join((*members, first))}"
        self.faults.append(
            ExpressionFault(
                first, message, offset, "Write one of them as a number with its unit", tuple(members)
            )
        )
