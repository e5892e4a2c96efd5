"""YAML text to plain values with the place of each. What a value means is not known here."""

from __future__ import annotations

import hashlib

from yaml.error import YAMLError

from builder.finding import Finding, Place
from builder.reading.faults import fault
from builder.reading.raw_text import decode
from builder.reading.spots import Document
from builder.reading.yaml_errors import explain
from builder.reading.yaml_reader import MAX_DEPTH, TooDeep, YamlReader

YAML_LIMIT = 1024**2
"""Largest YAML file that is read [bytes]."""


def read_yaml(data: bytes, file: str) -> Document:
    """Read one YAML file. Never raises: all that is wrong is in the document's findings.

    data : the file's bytes
    file : its name for places, relative to the plant folder, with `/`

    A syntax error makes the document broken, with that as its one finding about the structure. Other
    findings don't stop the reading. Values that aliases repeat are shared, and nothing may change them.
    """
    document = Document(file, digest=hashlib.sha256(data).hexdigest())
    text, document.findings = decode(data, file, YAML_LIMIT)
    if text is None:
        document.broken = True
        return document
    reader = YamlReader(text, file)
    try:
        document.value, document.spot = reader.read()
    except YAMLError as error:
        line, column, rule, message, remedy = explain(error, text)
        return _break(document, fault(Place(file, line, column), rule, message, remedy))
    except TooDeep as deep:
        message = f"Values are nested more than {MAX_DEPTH} levels deep."
        remedy = "Look for a closing bracket that is missing."
        return _break(document, fault(Place(file, deep.line, deep.column), "text-too-deep", message, remedy))
    document.broken = document.value is None
    document.findings += reader.findings
    document.marred = frozenset(reader.marred)
    return document


def _break(document: Document, finding: Finding) -> Document:
    document.broken = True
    document.findings.append(finding)
    return document
