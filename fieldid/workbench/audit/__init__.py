"""The room of audits: a guide tried on simulated specimens, and its figures."""
