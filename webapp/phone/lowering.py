"""Turns the engine's Python into simpler Python whose translation to JavaScript means the same.

What is surely a number or a text gets JavaScript's own operators; lists, dicts and what is not known get helpers from
`runtime.js` and `containers.js`. After this, equality is written `is` (it becomes ===) and `is None` is written `== None`.
"""

import ast
import copy
from itertools import count

from .expressions import own_signature
from .kinds import NOTHING, Scope
from .program import is_docstring
from .tables import BUILTINS, MATH, MATH_CONSTANTS, METHODS, NUMBER, NUMBER_TEST, TEXT, TYPE_TESTS

ORDER = (ast.Lt, ast.LtE, ast.Gt, ast.GtE)
SWAPPED = {ast.Eq: ast.Is, ast.NotEq: ast.IsNot, ast.Is: ast.Eq, ast.IsNot: ast.NotEq}


def call(name, *arguments):
    """A call to something with a plain or dotted name."""
    owner, _, last = name.rpartition(".")
    func = ast.Attribute(ast.Name(owner, ast.Load()), last, ast.Load()) if owner else ast.Name(name, ast.Load())
    return ast.Call(func, list(arguments), [])


def numeric_constants(program):
    """Values of the constants that are plain numbers: they are put where they are used."""
    found = {}
    for name, statement in program.constants.items():
        value = statement.value
        operand = value.operand if isinstance(value, ast.UnaryOp) and isinstance(value.op, ast.USub) else value
        if isinstance(operand, ast.Constant) and type(operand.value) in (int, float):
            found[name] = value
    return found


class Lowering(ast.NodeTransformer):
    """Lowers the statements of one module; `slow` notes where a helper stands for want of an annotation."""

    def __init__(self, world, module):
        self.world, self.module = world, module
        self.program = world.program
        self.numbers = numeric_constants(world.program)
        self.scope = Scope(world)
        self.owner = None
        self.fresh = count(1)
        self.breaches, self.slow = [], []

    # Statements

    def visit_FunctionDef(self, node):
        """Drop docstring and annotations; keyword-only parameters become positional."""
        outer = self.scope
        arguments = node.args
        arguments.defaults = [self.visit(default) for default in arguments.defaults + arguments.kw_defaults if default is not None]
        self.scope = Scope(self.world, node, parent=outer if outer.names else None, owner=self.owner)
        arguments.args = [ast.arg(argument.arg) for argument in arguments.args + arguments.kwonlyargs]
        arguments.kwonlyargs, arguments.kw_defaults, node.returns = [], [], None
        node.body = self._body(node.body)
        self.scope = outer
        return node

    def visit_ClassDef(self, node):
        """Lower the methods."""
        self.owner = node.name
        node.body = self._body(node.body)
        self.owner = None
        return node

    def _body(self, statements):
        """Lower a block of statements."""
        lowered = []
        for statement in statements:
            if not is_docstring(statement):
                result = self.visit(statement)
                lowered += result if isinstance(result, list) else [result]
        return lowered or [ast.Pass()]

    def visit_AnnAssign(self, node):
        """Drop the annotation."""
        return self.visit(ast.Assign([node.target], node.value)) if node.value else ast.Pass()

    def visit_AugAssign(self, node):
        """Plain arithmetic only: on lists Python would change the list in place."""
        whole = ast.BinOp(node.target, node.op, node.value)
        if isinstance(node.op, (ast.Add, ast.Mult)) and self.scope.kind(whole) not in (NUMBER, TEXT):
            self._breach(node, "not known to be numbers or texts: annotate, or write x = x + y (for lists x.extend(y))")
        return self.generic_visit(node)

    def visit_For(self, node):
        """A loop over a range counts on its own: its end stands fixed, the name keeps its last value."""
        body = [part for statement in node.body for part in _listed(self.visit(statement))]
        source = node.iter
        if not (isinstance(source, ast.Call) and getattr(source.func, "id", None) == "range"):
            return ast.For(node.target, self.visit(source), body, [])
        number = next(self.fresh)
        counter, end = f"rt_i{number}", f"rt_end{number}"
        bounds = [self.visit(argument) for argument in source.args]
        start = bounds[0] if len(bounds) > 1 else ast.Constant(0)
        arguments = [start, ast.Name(end, ast.Load())] + bounds[2:]
        first = ast.Assign([node.target], ast.Name(counter, ast.Load()))
        loop = ast.For(ast.Name(counter, ast.Store()), call("range", *arguments), [first] + body, [])
        return [ast.Assign([ast.Name(end, ast.Store())], bounds[min(1, len(bounds) - 1)]), loop]

    def visit_If(self, node):
        """Python's truth."""
        orelse = [part for statement in node.orelse for part in _listed(self.visit(statement))]
        return ast.If(self._truth(node.test), self._body(node.body), orelse)

    def visit_While(self, node):
        """Python's truth."""
        return ast.While(self._truth(node.test), self._body(node.body), [])

    def visit_Raise(self, node):
        """EngineError is thrown by a helper."""
        return ast.Expr(call("rt_fail", *[self.visit(argument) for argument in node.exc.args]))

    # Truth, comparison, arithmetic

    def _truth(self, node):
        """A condition as JavaScript takes it."""
        if isinstance(node, ast.BoolOp):
            return ast.BoolOp(node.op, [self._truth(value) for value in node.values])
        if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
            return ast.UnaryOp(ast.Not(), self._truth(node.operand))
        if self.scope.is_plain(node):
            return self.visit(node)
        if self.scope.is_list(node):
            return ast.Compare(ast.Attribute(self.visit(node), "length", ast.Load()), [ast.Gt()], [ast.Constant(0)])
        return call("rt_truth", self._noted(node, self.visit(node), "truth of something unknown"))

    def visit_BoolOp(self, node):
        """`a or b` as a value gives a itself, if that is true in Python's sense."""
        if all(self.scope.is_plain(value) for value in node.values[:-1]):
            return self.generic_visit(node)
        first = node.values[0]
        rest = node.values[1] if len(node.values) == 2 else ast.BoolOp(node.op, node.values[1:])
        if any(isinstance(part, ast.Call) for part in ast.walk(first)):
            self._breach(node, "name the result of the call first: it would be called twice")
        test, value = self._truth(copy.deepcopy(first)), self.visit(first)
        if isinstance(node.op, ast.Or):
            return ast.IfExp(test, value, self.visit(rest))
        return ast.IfExp(test, self.visit(rest), value)

    def visit_UnaryOp(self, node):
        """`not` asks for truth."""
        return self._truth(node) if isinstance(node.op, ast.Not) else self.generic_visit(node)

    def visit_IfExp(self, node):
        """Python's truth."""
        return ast.IfExp(self._truth(node.test), self.visit(node.body), self.visit(node.orelse))

    def visit_comprehension(self, node):
        """Python's truth in conditions."""
        conditions = [self._truth(condition) for condition in node.ifs]
        return ast.comprehension(node.target, self.visit(node.iter), conditions, 0)

    def visit_Compare(self, node):
        """Comparisons by kind; a chain becomes comparisons joined by `and`."""
        sides = [node.left] + node.comparators
        pairs = [self._pair(copy.deepcopy(sides[at]), op, copy.deepcopy(sides[at + 1])) for at, op in enumerate(node.ops)]
        return pairs[0] if len(pairs) == 1 else ast.BoolOp(ast.And(), pairs)

    def _pair(self, left, op, right):
        """One comparison."""
        kinds = (self.scope.kind(left), self.scope.kind(right))
        plain = any(kind in (NUMBER, TEXT) for kind in kinds)
        note = left
        left, right = self.visit(left), self.visit(right)
        if isinstance(op, (ast.In, ast.NotIn)):
            return _unless(isinstance(op, ast.NotIn), call("rt_contains", right, left))
        if isinstance(op, (ast.Eq, ast.NotEq)) and not plain and NOTHING not in kinds:
            return _unless(isinstance(op, ast.NotEq), call("rt_equals", self._noted(note, left, "== of something unknown"), right))
        if isinstance(op, ORDER) and not plain:
            compared = call("rt_compare", self._noted(note, left, "order of something unknown"), right)
            return ast.Compare(compared, [op], [ast.Constant(0)])
        swap = not isinstance(op, (ast.Is, ast.IsNot)) or right.value is None
        return ast.Compare(left, [SWAPPED.get(type(op), type(op))() if swap else op], [right])

    def visit_BinOp(self, node):
        """Arithmetic by kind."""
        left, right = self.scope.kind(node.left), self.scope.kind(node.right)
        of_lists = self.scope.is_list(node.left) or self.scope.is_list(node.right)
        swapped = self.scope.is_list(node.right)
        known = {"Add": (NUMBER in (left, right) or TEXT in (left, right)), "Mult": left == right == NUMBER}
        lowered = self.generic_visit(node)
        operation = type(node.op).__name__
        if operation in ("Mod", "FloorDiv"):
            return call("rt_mod" if operation == "Mod" else "rt_floordiv", lowered.left, lowered.right)
        if operation not in known or known[operation]:
            return lowered
        if of_lists and operation == "Mult":
            return call("rt_repeat", *((lowered.right, lowered.left) if swapped else (lowered.left, lowered.right)))
        if of_lists:
            return call("rt_concat", lowered.left, lowered.right)
        helper = "rt_add" if operation == "Add" else "rt_multiply"
        return call(helper, self._noted(node, lowered.left, operation + " of something unknown"), lowered.right)

    # Names, items, calls

    def visit_Name(self, node):
        """Numeric constants stand where they are used."""
        if isinstance(node.ctx, ast.Load) and node.id in self.numbers and not self.scope.is_local(node.id):
            return copy.deepcopy(self.numbers[node.id])
        return node

    def visit_Attribute(self, node):
        """Constants of math."""
        if getattr(node.value, "id", None) == "math" and node.attr in MATH_CONSTANTS:
            return ast.Name(MATH_CONSTANTS[node.attr], ast.Load())
        return self.generic_visit(node)

    def visit_Dict(self, node):
        """Dicts joined by ** are merged; keys that are no plain words go through a helper."""
        keys, values = node.keys, [self.visit(value) for value in node.values]
        if None not in keys:
            return _record([self.visit(key) for key in keys], values)
        parts, start = [], 0
        for at in [at for at, key in enumerate(keys) if key is None] + [len(keys)]:
            if at > start:
                parts.append(_record([self.visit(key) for key in keys[start:at]], values[start:at]))
            parts += values[at : at + 1]
            start = at + 1
        return call("rt_merge", *parts)

    def visit_Call(self, node):
        """Calls by what is called."""
        if isinstance(node.func, ast.Attribute):
            return self._method(node, node.func.value, node.func.attr)
        called = node.func.id
        if self.scope.is_local(called) or called not in BUILTINS:
            self._place_keywords(node, called)
            return ast.Call(node.func, [self.visit(argument) for argument in node.args], [])
        special = getattr(self, "_" + called, None)
        if special is not None:
            return special(node)
        return call(BUILTINS[called].phone, *[self.visit(argument) for argument in node.args])

    def _place_keywords(self, node, called):
        """Put keyword arguments where the signature has them, defaults in the gaps."""
        if node.keywords:
            names, defaults, _ = own_signature(self.program, called)
            given = {keyword.arg: keyword.value for keyword in node.keywords}
            last = max(names.index(name) for name in given)
            missing = names[len(node.args) : last + 1]
            node.args = node.args + [given[name] if name in given else copy.deepcopy(defaults[name]) for name in missing]

    def _method(self, node, owner, method):
        """Methods of math, of lists, dicts and texts, of the engine's classes."""
        arguments = [self.visit(argument) for argument in node.args]
        if getattr(owner, "id", None) == "math":
            return call(MATH[method].phone, *arguments)
        if method not in METHODS:
            return ast.Call(ast.Attribute(self.visit(owner), method, ast.Load()), arguments, [])
        form, owner = METHODS[method], self.visit(owner)
        if form.phone.startswith("."):
            return ast.Call(ast.Attribute(owner, form.phone[1:], ast.Load()), arguments, [])
        return call(form.phone, owner, *arguments, *self._options(node, form.keywords))

    def _options(self, node, names):
        """Values of `key=` and `reverse=`, in order."""
        given = {keyword.arg: keyword.value for keyword in node.keywords}
        missing = {"key": ast.Constant(None), "reverse": ast.Constant(False)}
        return [self.visit(given[name]) if name in given else missing[name] for name in names]

    def _sorted(self, node):
        return call("rt_sorted", self.visit(node.args[0]), *self._options(node, ("key", "reverse")))

    def _min(self, node, several="Math.min", one="rt_least"):
        kinds = [self.scope.kind(argument) for argument in node.args]
        arguments = [self.visit(argument) for argument in node.args]
        if len(arguments) == 1:
            return call(one, arguments[0], *self._options(node, ("key",)))
        if NUMBER in kinds:
            return call(several, *arguments)
        return call(one, self._noted(node, ast.List(arguments, ast.Load()), "min or max of something unknown"), ast.Constant(None))

    def _max(self, node):
        return self._min(node, "Math.max", "rt_greatest")

    def _len(self, node):
        argument = node.args[0]
        if self.scope.is_list(argument) or self.scope.kind(argument) == TEXT:
            return ast.Attribute(self.visit(argument), "length", ast.Load())
        return call("rt_len", self._noted(argument, self.visit(argument), "length of something unknown"))

    def _float(self, node):
        known = self.scope.kind(node.args[0]) == NUMBER
        argument = self.visit(node.args[0])
        return ast.UnaryOp(ast.UAdd(), argument) if known else call("rt_float", argument)

    def _range(self, node):
        arguments = [self.visit(argument) for argument in node.args]
        start, stop = arguments[:2] if len(arguments) > 1 else [ast.Constant(0), arguments[0]]
        return call("rt_range", start, stop, arguments[2] if len(arguments) > 2 else ast.Constant(1))

    def _isinstance(self, node):
        tested, wanted = self.visit(node.args[0]), node.args[1]
        if isinstance(wanted, ast.Tuple):
            return call(NUMBER_TEST, tested)
        return call(TYPE_TESTS[wanted.id], tested) if wanted.id in TYPE_TESTS else call("isinstance", tested, wanted)

    def _super(self, node):
        return node

    def _noted(self, node, lowered, what):
        """Note a slow helper."""
        self.slow.append((self.module.place(node), what))
        return lowered

    def _breach(self, node, message):
        self.breaches.append((self.module.place(node), message))


def _unless(negated, expression):
    return ast.UnaryOp(ast.Not(), expression) if negated else expression


def _listed(result):
    return result if isinstance(result, list) else [result]


def _record(keys, values):
    """A dict display, through a helper if a key is no plain word."""
    if all(isinstance(key, ast.Constant) and key.value.isascii() and key.value.isidentifier() for key in keys):
        return ast.Dict(keys, values)
    return call("rt_record", *[part for pair in zip(keys, values) for part in pair])
