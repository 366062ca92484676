#!/usr/bin/env python3
"""Changes each named number of units, timeline, measures and findings a little, up and down, and asks the tests.

Stryker changes operators and conditions and leaves numbers alone, but a limit that is off by one hurts as well. Run in a
copy of the tree, never in the tree itself: it writes into src/. Prints what no test noticed.

    python3 tests/mutation/numbers.py src/findings src/measures …
"""
import os
import re
import signal
import subprocess
import sys
from pathlib import Path

NAMED = re.compile(r'^((?:export )?const [A-Z_0-9]+ = )(-?[0-9_.]+)\b(.*)$', re.M)


def neighbours(text):
    value = float(text.replace('_', ''))
    if '.' in text or value == 0:
        return [f'{value * 1.1:.6g}', f'{value * 0.9:.6g}'] if value else ['1']
    return [f'{value + 1:.0f}', f'{value - 1:.0f}']


def noticed(folder, path):
    """Whether a test fails: first those named like the file, where there are some, then those of the room."""
    room = {'src/units.ts': 'tests/units.test.ts'}.get(folder, str(path.parent).replace('src', 'tests', 1))
    named = Path(room) / f'{path.stem}.test.ts'
    command = ['npx', 'vitest', 'run', '--config', 'tests/mutation/vitest.config.ts', '--bail', '1']
    asked = [str(named)] if named.exists() else []
    return any(fails([*command, tests]) for tests in [*asked, room])


def fails(command):
    """Whether a command fails or hangs: a number that is off can make a search never end."""
    running = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True)
    try:
        return running.wait(timeout=300) != 0
    except subprocess.TimeoutExpired:
        os.killpg(running.pid, signal.SIGKILL)
        return True


if __name__ == '__main__':
    killed = survived = 0
    for folder in sys.argv[1:]:
        for path in sorted(Path(folder).rglob('*.ts')) if Path(folder).is_dir() else [Path(folder)]:
            whole = path.read_text()
            for found in NAMED.finditer(whole):
                for other in neighbours(found[2]):
                    path.write_text(whole[: found.start(2)] + other + whole[found.end(2) :])
                    try:
                        seen = noticed(folder, path)
                    finally:
                        path.write_text(whole)
                    killed, survived = killed + seen, survived + (not seen)
                    if not seen:
                        print(f'{path}: {found[1]}{found[2]} -> {other}', flush=True)
    print(f'{killed} noticed, {survived} not')
