"""README.md and DEVELOPERS.md name everything there is, and nothing that is not."""

from __future__ import annotations

import argparse
import ast
import dataclasses
import datetime
import json
import os
import re
import shutil
import tomllib
from pathlib import Path

import pytest

from keyapp.checker import run_check
from keyapp.checker.codes import CODES
from keyapp.cli import draw, weigh
from keyapp.cli.ask_json import ACTS, Desk
from keyapp.cli.main import build_parser
from keyapp.cli.terminal import Terminal
from keyapp.folders import keys_folder
from keyapp.keyfile.load import FOLDERS, SINGLE_FILES
from keyapp.keyfile.shapes.common import FREQUENCY_WORDS, OCCURRENCE_WORDS
from keyapp.learn import counted, read_calls
from keyapp.model import (
    Choice,
    ContactKind,
    Danger,
    Evidence,
    Form,
    Means,
    Settings,
    Sureness,
    TargetKind,
    View,
    Weights,
)
from keyapp.wording import Words
from keyapp.work import Enquiry
from tests.test_layers import MAY_IMPORT

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
BOTH = README + DEVELOPERS
DOCUMENTS = pytest.mark.parametrize("document", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])

MADE_BY_THE_READER = {
    "wafer-lid.yaml",
    "cases.yaml",
    "our-office.yaml",
    "id.svg",
    "drawn/my-figure.svg",
    "enquiry.json",
}
"""Files that an example lets the reader make, or the program makes, so that they need not be there."""
HOLDING = ("keyapp", "keys", "images", "tests")


def sub_parsers() -> dict[str, argparse.ArgumentParser]:
    (commands,) = (a for a in build_parser()._actions if isinstance(a, argparse._SubParsersAction))
    return dict(commands.choices)


def options() -> list[tuple[str, str]]:
    return sorted(
        (command, option)
        for command, parser in sub_parsers().items()
        for action in parser._actions
        for option in action.option_strings
        if option not in ("-h", "--help")
    )


def choices() -> list[str]:
    return [
        f"keyapp {command} {choice}"
        for command, parser in sub_parsers().items()
        for action in parser._actions
        if not action.option_strings
        for choice in action.choices or ()
    ]


def fields_asked_for(folder: str) -> set[str]:
    """Names of fields that the readers in `folder` take: `fields.text("asks")`, `read_basis(fields, "basis")`."""
    found = {"basis", "number"}
    for path in (ROOT / folder).glob("*.py"):
        for call in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            match call:
                case ast.Call(
                    func=ast.Attribute(value=ast.Name(id="fields" | "inner"), attr=method),
                    args=[ast.Constant(value=str(name)), *_],
                ) if method not in ("has", "place_of"):
                    found.add(name)
                case ast.Call(args=[ast.Name(id="fields"), ast.Constant(value=str(name)), *_]):
                    found.add(name)
    return found


def act_fields() -> set[str]:
    """Names of fields that the acts of `keyapp ask --json` take."""
    tree = ast.parse((ROOT / "keyapp/cli/ask_json.py").read_text(encoding="utf-8"))
    taken = {
        call.args[1].value
        for call in ast.walk(tree)
        if isinstance(call, ast.Call)
        and isinstance(call.func, ast.Name)
        and call.func.id == "_take"
        and isinstance(call.args[1], ast.Constant)
    }
    return taken | {field.name for field in dataclasses.fields(Settings)}


def packages() -> list[str]:
    return sorted(
        path.name if path.is_dir() else path.stem
        for path in (ROOT / "keyapp").iterdir()
        if (path.suffix == ".py" or (path / "__init__.py").is_file()) and path.name != "__init__.py"
    )


def checker_modules() -> list[str]:
    return sorted(path.stem for path in (ROOT / "keyapp/checker/rules").glob("*.py") if path.stem != "__init__")


def engine_modules() -> list[str]:
    return sorted(path.stem for path in (ROOT / "keyapp/engine").glob("*.py") if path.stem != "__init__")


def dependencies() -> list[str]:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    groups = [project["dependencies"], *project["optional-dependencies"].values()]
    return sorted({re.split(r"[<>=!~\[ ]", one)[0] for group in groups for one in group})


def import_table() -> list[tuple[list[str], set[str]]]:
    """Rows of the table in DEVELOPERS.md: packages, and what they may import."""
    section = DEVELOPERS.split("## Who may import whom")[1].split("\n## ")[0]
    rows = re.findall(r"^\| (`.*?) \| (.*?) \|", section, flags=re.MULTILINE)
    return [(re.findall(r"`(\w+)`", who), set(re.findall(r"`(\w+)`", may.split(";")[0]))) for who, may in rows]


def blocks(document: str, language: str) -> list[str]:
    return re.findall(rf"^```{language}\n(.*?)^```", document, flags=re.MULTILINE | re.DOTALL)


def prose(document: str) -> str:
    return re.sub(r"^```.*?^```", "", document, flags=re.MULTILINE | re.DOTALL)


def named_paths(document: str) -> list[str]:
    """Relative paths in links and in code words; what an example lets the reader make is left out."""
    words = re.findall(r"\]\(([^)#\s]+)[^)]*\)", document) + re.findall(r"`([\w.*/-]+)`", prose(document))
    top = {path.name for path in ROOT.iterdir()}
    ends = (".py", ".yaml", ".md", ".toml", ".svg", ".png", ".ttf", ".otf", ".json")
    paths = {
        word.removeprefix("my-").rstrip("/")
        for word in words
        if not word.startswith(("http", ".venv"))
        and ((word.split("/")[0] in top and "/" in word) or (word.endswith(ends) and not word.startswith(("*", "."))))
    }
    return sorted(paths - MADE_BY_THE_READER)


# What must be named ------------------------------------------------------------------------------


@pytest.mark.parametrize("command", sorted(sub_parsers()))
def test_a_command_is_in_the_readme_and_the_developers_guide(command):
    assert f"keyapp {command}" in README
    assert f"keyapp {command}" in DEVELOPERS


@pytest.mark.parametrize(("command", "option"), options())
def test_an_option_is_named_in_the_section_of_its_command(command, option):
    assert option in README or option in DEVELOPERS
    lines = [line for line in README.splitlines() if f"keyapp {command}" in line]
    assert any(option in line for line in lines)


@pytest.mark.parametrize("choice", choices())
def test_a_choice_of_a_command_is_in_the_readme(choice):
    assert choice in README


@pytest.mark.parametrize("act", sorted(ACTS))
def test_an_act_is_in_the_readme(act):
    assert f"`{act}`" in README


@pytest.mark.parametrize("field", sorted(act_fields()))
def test_a_field_of_an_act_is_in_the_readme(field):
    assert f"`{field}`" in README


@pytest.mark.parametrize("word", [str(w) for kind in (Choice, Sureness, Evidence) for w in kind])
def test_a_word_of_an_answer_is_in_the_readme(word):
    assert f"`{word}`" in README


@pytest.mark.parametrize("name", sorted({*weigh.CASE_FIELDS, *weigh.REPORT_FIELDS, *weigh.SIZE_FIELDS}))
def test_a_field_of_a_weighed_case_is_in_the_readme(name):
    assert f"`{name}`" in README


@pytest.mark.parametrize("code", sorted(CODES))
def test_a_code_of_the_checker_is_in_the_developers_guide(code):
    assert f"`{code}`" in DEVELOPERS


@pytest.mark.parametrize("name", packages())
def test_a_package_or_module_is_in_the_developers_guide(name):
    assert f"`{name}`" in DEVELOPERS


@pytest.mark.parametrize("module", engine_modules())
def test_a_module_of_the_engine_is_in_the_developers_guide(module):
    assert f"`{module}.py`" in DEVELOPERS


@pytest.mark.parametrize("module", checker_modules())
def test_a_family_of_rules_is_in_the_developers_guide(module):
    assert f"`{module}.py`" in DEVELOPERS


@pytest.mark.parametrize("name", sorted(fields_asked_for("keyapp/keyfile/shapes")))
def test_a_field_of_a_key_file_is_in_the_developers_guide(name):
    assert re.search(rf"`{name}`|^\s*(?:- )?{name}:|[{{,] ?{name}:", DEVELOPERS, flags=re.MULTILINE)


@pytest.mark.parametrize("name", sorted([*FOLDERS, *(f"{name}.yaml" for name in SINGLE_FILES)]))
def test_a_file_or_folder_of_a_key_is_in_the_developers_guide(name):
    assert f"keys/{name}" in DEVELOPERS


@pytest.mark.parametrize(
    "word",
    sorted(
        {*FREQUENCY_WORDS, *OCCURRENCE_WORDS}
        | {str(w) for kind in (Means, View, Form, Danger, ContactKind, TargetKind) for w in kind}
    ),
)
def test_a_word_of_the_format_is_in_the_developers_guide(word):
    assert f"`{word}`" in DEVELOPERS


@pytest.mark.parametrize("name", sorted(field.name for field in dataclasses.fields(Weights) if field.name != "reasons"))
def test_a_number_of_the_engine_is_in_the_developers_guide(name):
    assert f"`{name}`" in DEVELOPERS


@pytest.mark.parametrize("name", dependencies())
def test_a_dependency_is_in_the_developers_guide(name):
    assert f"`{name}`" in DEVELOPERS


@pytest.mark.parametrize(("code", "meaning"), sorted(CODES.items()))
def test_the_meaning_of_a_code_is_told_in_its_own_words(code, meaning):
    assert f"| `{code}` | {meaning} |" in DEVELOPERS


@pytest.mark.parametrize("package", sorted(MAY_IMPORT))
def test_the_import_table_is_the_one_that_is_tested(package):
    told = {name: words for row in import_table() for name in row[0] for words in [row[1]]}
    assert told[package] == MAY_IMPORT[package]


def test_the_number_of_families_in_the_readme_is_right(shipped):
    families = {taxon.family for taxon in shipped.keyset.taxa.values() if taxon.family and not taxon.outside}
    assert f"{len(families)} families" in README


# What is named must be there ---------------------------------------------------------------------


@pytest.mark.parametrize("path", named_paths(BOTH))
def test_a_path_that_is_named_exists(path):
    assert list(ROOT.glob(path)) or any(list((ROOT / folder).glob(f"**/{path}")) for folder in HOLDING)


@DOCUMENTS
def test_a_code_that_is_named_exists(document):
    assert set(re.findall(r"\bK\d{3}\b", document)) <= set(CODES)


@DOCUMENTS
def test_a_command_that_is_named_exists(document):
    assert set(re.findall(r"\bkeyapp ([a-z]+)\b", document)) <= set(sub_parsers())


@DOCUMENTS
def test_no_path_leads_out_of_the_checkout(document):
    assert re.findall(r"(?:/home/|/root/|/work/|/Users/|C:\\)\S*", document) == []


@pytest.mark.parametrize("script", [".ci/setup", ".ci/run"])
def test_the_one_command_is_named_and_may_be_run(script):
    assert f"bash {script}" in README
    assert os.access(ROOT / script, os.X_OK)


# Examples run ------------------------------------------------------------------------------------


def spoken() -> list[tuple[str, dict[str, object]]]:
    """The exchange shown in the README: each request with the part of the reply that is shown."""
    (shown,) = (block for block in blocks(README, "text") if block.startswith('> {"act"'))
    pairs = re.findall(r"^> (.*)\n< (.*)$", shown, flags=re.MULTILINE)
    return [(request, json.loads(reply)) for request, reply in pairs]


def shape(value: object) -> object:
    """Names and kinds of values, without the values: what a script relies on."""
    match value:
        case dict():
            return {name: shape(inner) for name, inner in value.items()}
        case list():
            return [shape(value[0])] if value else []
        case bool() | None:
            return "yes or no, or nothing"
        case int() | float():
            return "number"
    return "text"


def within(shown: object, whole: object) -> bool:
    """Whether everything shown is there, under the same names and of the same kind."""
    match shown, whole:
        case dict(), dict():
            return all(name in whole and within(inner, whole[name]) for name, inner in shown.items())
        case list(), list():
            return not shown or (bool(whole) and within(shown[0], whole[0]))
    return shape(shown) == shape(whole)


def names_in(value: object) -> set[str]:
    """Every name in a reply, at any depth; ids that serve as names (in `holds`) are left out."""
    match value:
        case dict():
            inner = [names_in(each) for name, each in value.items() if name != "holds"]
            return set(value) | {name for names in inner for name in names}
        case list():
            return {name for each in value for name in names_in(each)}
    return set()


@pytest.fixture
def desk(shipped) -> Desk:
    return Desk(Enquiry(shipped), Words(shipped.keyset))


def test_the_exchange_in_the_readme_runs(desk):
    exchange = spoken()
    assert len(exchange) >= 4
    wrong = [(request, shown) for request, shown in exchange if not within(shown, desk.answer(request))]
    assert wrong == []


def test_the_exchange_in_the_readme_says_what_is_shown(desk):
    replies = [(shown, desk.answer(request)) for request, shown in spoken()]
    plain = [({k: v for k, v in shown.items() if isinstance(v, str | bool)}, reply) for shown, reply in replies]
    assert [shown for shown, _ in plain] == [{name: reply[name] for name in shown} for shown, reply in plain]


@pytest.mark.parametrize(
    "request_",
    [
        {"act": "state"},
        {"act": "lead", "choice": "first"},
        {"act": "settings", "hurt": True},
        {"act": "report", "character": "leg-count", "states": ["eight"]},
        {"act": "measure", "character": "body-length", "mm": 9},
        {"act": "result"},
        {"act": "there is no such act"},
    ],
    ids=lambda one: one["act"],
)
def test_every_name_in_a_reply_is_in_the_readme(desk, request_):
    names = names_in(desk.answer(json.dumps(request_)))
    assert {name for name in names if f"`{name}`" not in README} == set()


def test_the_confirmed_calls_in_the_readme_can_be_learned_from(shipped):
    (calls,) = blocks(README, "json")
    assert counted(shipped.keyset, read_calls(calls)).calls == 1


def example(folder: Path) -> list[str]:
    """Carry out the worked example of DEVELOPERS.md on a copy of the key; what the checker finds then."""
    section = DEVELOPERS.split("## Adding a family: a worked example")[1].split("\n## ")[0]
    taxon, source, wording, figure, line, couplet, _ = blocks(section, "yaml")
    keys = folder / "my-keys"
    shutil.copytree(keys_folder(), keys)
    (keys / "taxa/wafer-lid.yaml").write_text(taxon, encoding="utf-8")
    for name, text in (
        ("sources.yaml", source),
        ("wording.yaml", wording),
        ("figures/spiders.yaml", figure),
        ("hunting-spiders.yaml", couplet),
    ):
        with (keys / name).open("a", encoding="utf-8") as file:
            file.write(text)
    path = keys / "hunting-spiders.yaml"
    before, after = path.read_text(encoding="utf-8").split("  leg-surface-4:\n")
    after = after.replace("        to: {taxon: spider-not-in-key}\n", line, 1)
    path.write_text(f"{before}  leg-surface-4:\n{after}", encoding="utf-8")
    return [str(one) for one in run_check(keys, None, datetime.date(2026, 11, 26)).problems]


def test_the_worked_example_adds_a_family_without_a_problem(tmp_path):
    assert example(tmp_path) == []


def test_the_family_of_the_worked_example_comes_first(tmp_path, capsys):
    example(tmp_path)
    case = next(block for block in blocks(DEVELOPERS, "yaml") if block.startswith("cases:"))
    (tmp_path / "cases.yaml").write_text(case, encoding="utf-8")
    assert weigh.run(Terminal(), tmp_path / "my-keys", tmp_path / "cases.yaml", "en") == 0
    (result,) = json.loads(capsys.readouterr().out)
    assert result["candidates"][0]["name"] == "Wafer-lid trapdoor spiders (Euctenizidae)"


def test_the_figure_of_the_worked_example_is_drawn(tmp_path):
    example(tmp_path)
    assert draw.run(Terminal(), tmp_path / "my-keys", ["wafer-lid"], tmp_path / "drawn") == 0
    assert (tmp_path / "drawn/wafer-lid.svg").read_text(encoding="utf-8").startswith("<svg")


def test_the_weighed_cases_in_the_readme_are_weighed(tmp_path, capsys):
    (example,) = (block for block in blocks(README, "yaml") if block.startswith("cases:"))
    file = tmp_path / "cases.yaml"
    file.write_text(example, encoding="utf-8")
    assert weigh.run(Terminal(), keys_folder(), file, "en") == 0
    assert [one["ok"] for one in json.loads(capsys.readouterr().out)] == [True] * example.count("- id:")
