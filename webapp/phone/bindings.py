"""Which local names a function has, and from what each gets its value."""

import ast


def bindings(statements):
    """Every assignment to a name in `statements`: the name, how a scope tells the kind of the value, the annotation if any."""
    found = []
    for node in own_nodes(statements):
        if isinstance(node, ast.Assign):
            found += _assigned(node.targets[0], node.value)
        elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            found.append((node.target.id, _unknown, node.annotation))
        elif isinstance(node, ast.AugAssign) and isinstance(node.target, ast.Name):
            found += _assigned(node.target, ast.BinOp(ast.Name(node.target.id, ast.Load()), node.op, node.value))
        elif isinstance(node, (ast.For, ast.comprehension)):
            found += _iterated(node.target, node.iter)
        elif isinstance(node, ast.Lambda):
            found += [(argument.arg, _unknown, None) for argument in node.args.args]
        elif isinstance(node, ast.FunctionDef):
            found.append((node.name, _unknown, None))
    return found


def own_nodes(nodes):
    """All nodes below, without the insides of nested functions."""
    for node in nodes:
        yield node
        if not isinstance(node, ast.FunctionDef):
            yield from own_nodes(ast.iter_child_nodes(node))


def _unknown(scope):
    return None


def _assigned(target, value):
    """Bindings of `target = value`."""
    if isinstance(target, ast.Name):
        return [(target.id, lambda scope: scope.kind(value), None)]
    if not isinstance(target, ast.Tuple):
        return []
    if isinstance(value, ast.Tuple) and len(value.elts) == len(target.elts):
        return [binding for part, given in zip(target.elts, value.elts) for binding in _assigned(part, given)]
    names = [part.id for part in target.elts if isinstance(part, ast.Name)]
    return [(name, lambda scope: scope.item(value), None) for name in names]


def _iterated(target, source):
    """Bindings of `for target in source`."""
    if isinstance(target, ast.Name):
        return [(target.id, lambda scope: scope.item(source), None)]
    return [(part.id, _part(source, index), None) for index, part in enumerate(target.elts)]


def _part(source, index):
    return lambda scope: scope.part(source, index)
