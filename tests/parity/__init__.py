"""What both engines are asked: seeded random cases, and how two answers are compared."""
