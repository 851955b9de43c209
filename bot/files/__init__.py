"""Documents: a value in, a file's name and its bytes out. What is written where is the gallery's (`bot.pictures.gallery`)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.files.records import csv_of, json_of
from bot.sheet import page_of
from core.records_file import Form, RecordsFile
from core.sheet import Sheet

if TYPE_CHECKING:
    from bot.ports import Document

ENDINGS = {Form.CSV: "csv", Form.JSON: "json"}


def file_of(document: Document) -> tuple[str, bytes]:
    """A document's file name, and what is in the file. One `case` for each kind of document."""
    match document:
        case RecordsFile(form, at):
            made = csv_of(document) if form is Form.CSV else json_of(document)
            return f"records-{at:%Y-%m-%d}.{ENDINGS[form]}", made
        case Sheet():
            return document.file_name, page_of(document)
