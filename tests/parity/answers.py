"""Asking either engine."""

import copy
import inspect
import json

from webapp import engine

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
