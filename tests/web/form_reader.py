"""Reads a page the way a browser without JavaScript would: what would be sent, what is said to be wrong."""

from html.parser import HTMLParser


class _Reader(HTMLParser):
    def __init__(self):
        super().__init__()
        self.sent, self.errors, self.texts = {}, {}, []
        self.area = self.select = self.error = None

    def handle_starttag(self, tag, attributes):
        found = dict(attributes)
        if tag == "input" and found.get("type") == "checkbox":
            self.sent.setdefault(found["name"], []).extend([found["value"]] if "checked" in found else [])
        elif tag == "input" and "name" in found and (found.get("type") != "radio" or "checked" in found):
            self.sent[found["name"]] = found.get("value") or ""
        elif tag == "textarea":
            self.area = found["name"]
            self.sent[self.area] = ""
        elif tag == "select":
            self.select = found["name"]
        elif tag == "option" and self.select and ("selected" in found or self.select not in self.sent):
            self.sent[self.select] = found["value"]
        elif found.get("class") == "field__error":
            self.error = found["id"].removesuffix("-error")
            self.errors[self.error] = ""

    def handle_endtag(self, tag):
        if tag == "textarea":
            self.area = None
        elif tag == "select":
            self.select = None
        elif tag == "p":
            self.error = None

    def handle_data(self, text):
        if self.area:
            self.sent[self.area] += text
        if self.error:
            self.errors[self.error] += text
        self.texts.append(text)


def _read(answer):
    reader = _Reader()
    reader.feed(answer.text)
    return reader


def fields(answer):
    """What pressing a button on this page would send, the button itself left out."""
    return _read(answer).sent


def errors(answer):
    """{field: sentence} for everything marked as wrong."""
    return _read(answer).errors


def words(answer):
    """The page's text on one line."""
    return " ".join(" ".join(_read(answer).texts).split())
