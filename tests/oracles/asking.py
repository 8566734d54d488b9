"""Asking keydrift: what every oracle does alike."""

import subprocess


class Missing(Exception):
    """Something from outside that an oracle cannot do without."""


def told_by(keydrift, *arguments):
    """Runs keydrift and gives what it printed; RuntimeError when it could not do what it was
    asked (exit status 2 and above; 1 is a finding)."""
    ran = subprocess.run([keydrift, *arguments], capture_output=True, text=True, check=False)
    if ran.returncode not in (0, 1):
        raise RuntimeError(f"keydrift {' '.join(arguments)}: {ran.stdout}{ran.stderr}")
    return ran.stdout + ran.stderr
