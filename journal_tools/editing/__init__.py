"""Records changed on the weaver's behalf, without touching what she wrote."""
