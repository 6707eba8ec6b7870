"""What kind of thing an expression gives, as far as annotations, literals and known calls tell.

Only what is certain counts: a name has a kind if everything assigned to it has that kind, or an annotation promises it.
None stands for "not known". Comprehension variables have names of their own by now (`naming.py`).
"""

import ast

from .bindings import bindings
from .program import signature
from .tables import BUILTINS, DICT, LIST, MATH, METHODS, NUMBER, TEXT, Kind

ANNOTATED = {"int": NUMBER, "float": NUMBER, "bool": NUMBER, "str": TEXT, "list": LIST, "tuple": LIST, "dict": DICT}
PLAIN = (NUMBER, TEXT)
ALIKE = ("list", "tuple", "sorted", "reversed")  # lists of the same items
NOTHING = Kind("nothing")  # None: says nothing about a name


def merged(first, second):
    """The kind that holds for two expressions both."""
    if first == second or second == NOTHING:
        return first
    if first == NOTHING:
        return second
    if first is None or second is None or first.base != second.base:
        return None
    return Kind(first.base, merged(first.item, second.item))


def common(kinds):
    """The kind that holds for all of several expressions."""
    result = NOTHING
    for kind in kinds:
        result = merged(result, kind)
    return known(result)


def known(kind):
    """A kind that says something, or None."""
    return None if kind == NOTHING else kind


def from_annotation(node, program):
    """The kind an annotation names; `| None` is left aside."""
    if isinstance(node, ast.BinOp):
        return common([from_annotation(node.left, program), from_annotation(node.right, program)])
    if isinstance(node, ast.Constant) and node.value is None:
        return NOTHING
    if isinstance(node, ast.Subscript):
        base = from_annotation(node.value, program)
        parts = node.slice.elts if isinstance(node.slice, ast.Tuple) else [node.slice]
        items = [from_annotation(part, program) for part in (parts[1:] if base == DICT else parts)]
        return base and Kind(base.base, common(items))
    if isinstance(node, ast.Name):
        return Kind(node.id) if node.id in program.classes else ANNOTATED.get(node.id)
    return None


class World:
    """Kinds of everything that has a name at top level, and of the attributes and methods of classes."""

    def __init__(self, program):
        self.program = program
        self.returns = {name: from_annotation(node.returns, program) for name, node in program.functions.items()}
        self.names, self.attributes, self.methods = {}, {}, {}
        for name, statement in program.constants.items():
            self.names[name] = self._assigned(statement, Scope(self))
        for name, node in program.classes.items():
            for item in node.body:
                if isinstance(item, ast.FunctionDef):
                    self.methods[name, item.name] = from_annotation(item.returns, program)
        for name, node in program.classes.items():
            for item in node.body:
                if getattr(item, "name", "") == "__init__":
                    self._add_attributes(name, item)

    def _assigned(self, statement, scope):
        """Kind of what a statement assigns."""
        return known(from_annotation(getattr(statement, "annotation", None), self.program)) or known(scope.kind(statement.value))

    def _add_attributes(self, owner, init):
        """Note what `__init__` sets."""
        scope = Scope(self, init, owner=owner)
        for statement in init.body:
            target = getattr(statement, "target", None) or getattr(statement, "targets", [None])[0]
            if isinstance(target, ast.Attribute) and target.value.id == "self":
                self.attributes[owner, target.attr] = self._assigned(statement, scope)

    def member(self, table, owner, name):
        """Look an attribute or method up in a class and its bases."""
        while owner in self.program.classes:
            if (owner, name) in table:
                return table[owner, name]
            bases = self.program.classes[owner].bases
            owner = bases[0].id if bases else None
        return None


class Scope:
    """Kinds of the names inside one function."""

    def __init__(self, world, function=None, parent=None, owner=None):
        self.world, self.parent = world, parent
        self.names, self.promised = {}, set()
        if function is not None:
            self._add_parameters(function, owner)
            self._settle(bindings(function.body))

    def _add_parameters(self, function, owner):
        defaults = signature(function).defaults
        for argument in function.args.args + function.args.kwonlyargs:
            kind = known(from_annotation(argument.annotation, self.world.program))
            if argument.arg == "self" and owner:
                kind = Kind(owner)
            elif kind is None and argument.annotation is None and argument.arg in defaults:
                kind = known(Scope(self.world).kind(defaults[argument.arg]))
            self.names[argument.arg] = kind
            self.promised.add(argument.arg)

    def _settle(self, found):
        """Begin with the first kind each name can have, then give up what another assignment contradicts."""
        for name, _, annotation in found:
            self.names.setdefault(name, None)
            if annotation is not None:
                self.names[name] = known(from_annotation(annotation, self.world.program))
                self.promised.add(name)
        for _ in range(2):
            for name, give, _ in found:
                self.names[name] = self.names.get(name) or known(give(self))
        changed = True
        while changed:
            changed = False
            for name, give, _ in found:
                kind = merged(self.names[name], give(self)) if name not in self.promised else self.names[name]
                changed = changed or kind != self.names[name]
                self.names[name] = kind

    def is_local(self, name):
        """Whether a name is bound in this function or one around it."""
        return name in self.names or (self.parent is not None and self.parent.is_local(name))

    def named(self, name):
        """Kind of a name."""
        if name in self.names:
            return self.names[name]
        return self.parent.named(name) if self.parent else self.world.names.get(name)

    def kind(self, node):
        """Kind of an expression, or None."""
        find = getattr(self, "_of_" + type(node).__name__, None)
        return find(node) if find else None

    def is_plain(self, node):
        """Whether an expression is surely a number or a text."""
        return self.kind(node) in PLAIN

    def is_list(self, node):
        """Whether an expression is surely a list."""
        kind = self.kind(node)
        return kind is not None and kind.base == "list"

    def item(self, node):
        """Kind of what iteration over an expression gives."""
        kind = self.kind(node)
        return kind and {"list": kind.item, "dict": TEXT, "text": TEXT}.get(kind.base)

    def part(self, source, index):
        """Kind of the part `index` of each item of `source`."""
        name = getattr(getattr(source, "func", None), "id", getattr(getattr(source, "func", None), "attr", None))
        if name == "enumerate":
            return NUMBER if index == 0 else self.item(source.args[0])
        if name == "zip":
            return self.item(source.args[index]) if index < len(source.args) else None
        kind = self.kind(source.func.value) if name == "items" else self.item(source)
        return TEXT if name == "items" and index == 0 else kind and kind.item

    def _of_Constant(self, node):
        return NOTHING if node.value is None else TEXT if isinstance(node.value, str) else NUMBER

    def _of_Name(self, node):
        return self.named(node.id)

    def _of_List(self, node):
        return Kind("list", common([self.kind(element) for element in node.elts]))

    _of_Tuple = _of_List

    def _of_ListComp(self, node):
        return Kind("list", known(self.kind(node.elt)))

    def _of_Dict(self, node):
        values = [self.kind(value) for key, value in zip(node.keys, node.values) if key is not None]
        return Kind("dict", common(values) if len(values) == len(node.keys) else None)

    def _of_Compare(self, node):
        return NUMBER

    _of_UnaryOp = _of_Compare

    def _of_BoolOp(self, node):
        return common([self.kind(value) for value in node.values])

    def _of_IfExp(self, node):
        return common([self.kind(node.body), self.kind(node.orelse)])

    def _of_BinOp(self, node):
        left, right = self.kind(node.left), self.kind(node.right)
        if isinstance(node.op, ast.Add):
            return left if left in PLAIN else right if right in PLAIN else _joined(left, right)
        if isinstance(node.op, ast.Mult):
            lists = [kind for kind in (left, right) if kind and kind.base == "list"]
            return lists[0] if lists else NUMBER if left == right == NUMBER else None
        return NUMBER

    def _of_Subscript(self, node):
        kind = self.kind(node.value)
        if isinstance(node.slice, ast.Slice) or kind == TEXT:
            return kind
        return kind and kind.item

    def _of_Attribute(self, node):
        if getattr(node.value, "id", None) == "math":
            return NUMBER
        owner = self.kind(node.value)
        return owner and self.world.member(self.world.attributes, owner.base, node.attr)

    def _of_Call(self, node):
        if isinstance(node.func, ast.Attribute):
            return self._of_method(node, node.func.value, node.func.attr)
        called = node.func.id
        if self.is_local(called):
            return None
        if called in self.world.program.classes:
            return Kind(called)
        if called in ("min", "max"):
            kinds = [self.kind(argument) for argument in node.args]
            return self.item(node.args[0]) if len(kinds) == 1 else NUMBER if NUMBER in kinds else common(kinds)
        if called in ALIKE:
            return Kind("list", self.item(node.args[0]))
        return BUILTINS[called].gives if called in BUILTINS else self.world.returns.get(called)

    def _of_method(self, node, owner, method):
        if getattr(owner, "id", None) == "math":
            return MATH[method].gives
        kind = self.kind(owner)
        if method not in METHODS:
            return kind and self.world.member(self.world.methods, kind.base, method)
        if method in ("get", "pop", "setdefault"):
            return kind and common([kind.item] + [self.kind(argument) for argument in node.args[1:]])
        if method in ("copy", "values"):
            return kind if method == "copy" else Kind("list", kind and kind.item)
        return METHODS[method].gives


def _joined(left, right):
    """Kind of left + right where neither is known to be a number or a text."""
    lists = [kind for kind in (left, right) if kind is not None and kind.base == "list"]
    return merged(*lists) if len(lists) == 2 else LIST if lists else None
