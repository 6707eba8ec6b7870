"""Asking either engine, and comparing what they say."""

import copy
import inspect
import json
import math

from webapp import engine

RELATIVE = 1e-9  # numbers: math.exp, log and pow may differ in the last bit between C and JavaScript
ABSOLUTE = 1e-12  # the same near zero, where 1 - depth cancels

# Asks for a batch of cases without waiting: the server's engine works meanwhile.
ASK_PHONE = """batch => {
  const answer = ({ call, arguments: given }) => {
    const before = JSON.stringify(given);
    try {
      const result = window.engine[call](...given);
      if (JSON.stringify(given) !== before) return { changed: "its input" };
      const bad = unfit(result, "");
      return bad === null ? { result } : { unfit: bad };
    } catch (error) {
      return error instanceof window.engine.EngineError ? { code: error.code } : { crash: String(error.stack) };
    }
  };
  const unfit = (value, path) => {
    if (typeof value === "number") return Number.isFinite(value) ? null : `${path}: ${value}`;
    if (value === null || typeof value === "string" || typeof value === "boolean") return null;
    if (typeof value !== "object") return `${path}: ${typeof value}`;
    for (const [key, item] of Object.entries(value)) {
      const bad = unfit(item, `${path}/${key}`);
      if (bad !== null) return bad;
    }
    return null;
  };
  window.answers = new Promise((resolve) => setTimeout(() => resolve(batch.map(answer).map((one) => JSON.stringify(one)))));
}"""
HEAR_PHONE = "() => window.answers"


def ask_server(case):
    """What the server's engine says: a result, or the code of an error."""
    function = getattr(engine, case["call"])
    given = copy.deepcopy(case["arguments"])
    try:
        result = function(**dict(zip(inspect.signature(function).parameters, given)))
    except engine.EngineError as error:
        return {"code": error.code}
    except (TypeError, ValueError, KeyError, AttributeError, IndexError, ArithmeticError) as error:
        return {"crash": f"{type(error).__name__}: {error}"}
    if given != case["arguments"]:
        return {"changed": "its input"}
    return {"result": json.loads(json.dumps(result, allow_nan=False))}


def differences(server, phone, path=""):
    """Yield every place where two answers differ: decisions exactly, numbers beyond the last few bits."""
    if _is_number(server) and _is_number(phone):
        if not math.isclose(server, phone, rel_tol=RELATIVE, abs_tol=ABSOLUTE):
            yield f"{path}: {server!r} on the server, {phone!r} on the phone"
    elif isinstance(server, dict) and isinstance(phone, dict) and sorted(server) == sorted(phone):
        for key in server:
            yield from differences(server[key], phone[key], f"{path}/{key}")
    elif isinstance(server, list) and isinstance(phone, list) and len(server) == len(phone):
        for index, (one, other) in enumerate(zip(server, phone)):
            yield from differences(one, other, f"{path}/{index}")
    elif type(server) is not type(phone) or server != phone:
        yield f"{path}: {_short(server)} on the server, {_short(phone)} on the phone"


def _is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def _short(value):
    """A value, or its keys, in a line."""
    return f"keys {sorted(value)}" if isinstance(value, dict) else repr(value)[:120]
