"""The quoting workbook, a file for each of its sheets."""
