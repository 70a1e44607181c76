"""Faults and good looks, told at any bench where a skein or a lot is in hand."""
