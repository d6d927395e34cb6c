"""Proof that one misread answer, with all that follows from it, leaves no danger unnamed."""

from keyapp.proof.prove import Proof, prove
from keyapp.proof.report import proof_data, proof_text

__all__ = ["Proof", "proof_data", "proof_text", "prove"]
