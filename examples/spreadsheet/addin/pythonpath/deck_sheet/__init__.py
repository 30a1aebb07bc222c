"""Between the cells of a spreadsheet and the deck library: it converts, the library computes."""
