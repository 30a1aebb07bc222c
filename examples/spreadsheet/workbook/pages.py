"""Paper: US Letter, everything on one page's width or on one page, the sheet's name and page at the foot."""

WIDTH, HEIGHT, MARGIN = 21590, 27940, 1500
UPRIGHT, ACROSS, ONE = "Deck upright", "Deck across", "Deck one page"


def make(workbook):
    family = workbook.StyleFamilies.getByName("PageStyles")
    for name, across, most_pages in ((UPRIGHT, False, 0), (ACROSS, True, 0), (ONE, False, 1)):
        style = workbook.createInstance("com.sun.star.style.PageStyle")
        family.insertByName(name, style)
        style.IsLandscape = across
        style.Width, style.Height = (HEIGHT, WIDTH) if across else (WIDTH, HEIGHT)
        for side in ("LeftMargin", "RightMargin", "TopMargin", "BottomMargin"):
            style.setPropertyValue(side, MARGIN)
        style.ScaleToPagesX, style.ScaleToPagesY = 1, most_pages
        style.CenterHorizontally = most_pages == 1
        # Pages are counted through all sheets.
        style.FirstPageNumber = 0
        style.HeaderIsOn, style.FooterIsOn = False, True
        foot(workbook, style)


def foot(workbook, style):
    """The sheet's name on the left, page of pages on the right."""
    content = style.RightPageFooterContent
    write(workbook, content.LeftText, ("SheetName",))
    content.CenterText.setString("")
    write(workbook, content.RightText, ("PageNumber", " / ", "PageCount"))
    style.RightPageFooterContent = content


def write(workbook, text, parts):
    text.setString("")
    cursor = text.createTextCursor()
    for part in parts:
        cursor.gotoEnd(False)
        if part.strip(" /"):
            text.insertTextContent(cursor, workbook.createInstance(f"com.sun.star.text.TextField.{part}"), False)
        else:
            text.insertString(cursor, part, False)
