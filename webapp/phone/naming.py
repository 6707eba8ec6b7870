"""Gives some names of the engine others on the phone.

Variables of comprehensions and lambdas live in a scope of their own in Python; the translator would let them overwrite a local
variable of the same name: `rep` becomes `rep_rt1`. Words that mean something to JavaScript or the translator are good local names
in Python: `case` becomes `case_rt`.
"""

import ast
from itertools import count

from .tables import FOREIGN_WORDS


class Renamer(ast.NodeTransformer):
    """Renames in place."""

    def __init__(self):
        self.numbers = count(1)
        self.names = {}

    def visit_ListComp(self, node):
        """Rename the variables of a comprehension, part by part as Python binds them."""
        outer = self.names
        for part in node.generators:
            part.iter = self.visit(part.iter)
            targets = [name.id for name in ast.walk(part.target) if isinstance(name, ast.Name)]
            self.names = {**self.names, **{name: self._fresh(name) for name in targets}}
            part.target = self.visit(part.target)
            part.ifs = [self.visit(condition) for condition in part.ifs]
        node.elt = self.visit(node.elt)
        self.names = outer
        return node

    def visit_Lambda(self, node):
        """Rename the parameters of a lambda."""
        outer = self.names
        self.names = {**outer, **{argument.arg: self._fresh(argument.arg) for argument in node.args.args}}
        for argument in node.args.args:
            argument.arg = self.names[argument.arg]
        node.body = self.visit(node.body)
        self.names = outer
        return node

    def visit_Name(self, node):
        """Use the new name."""
        node.id = self.names.get(node.id, _own_word(node.id))
        return node

    def visit_arg(self, node):
        """Parameters of functions."""
        node.arg = _own_word(node.arg)
        return node

    def visit_keyword(self, node):
        """Keywords in calls."""
        node.arg = _own_word(node.arg)
        return self.generic_visit(node)

    def visit_FunctionDef(self, node):
        """Functions inside functions."""
        node.name = _own_word(node.name)
        return self.generic_visit(node)

    def _fresh(self, name):
        return f"{name}_rt{next(self.numbers)}"


def _own_word(name):
    """The name, or another for one that means something else on the phone."""
    return f"{name}_rt" if name in FOREIGN_WORDS else name


def rename(program):
    """Rename in all functions and constants of the program."""
    for module in program.modules:
        for statement in module.tree.body:
            Renamer().visit(statement)
