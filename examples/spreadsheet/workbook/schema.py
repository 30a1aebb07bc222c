"""What the library's schema of a job says of a field: the text of its note, and the words to choose from."""

YES_NO = ("yes", "no")


class Schema:
    """The schema, to be asked by the path of a field."""

    def __init__(self, document):
        self._document = document

    def note(self, path):
        """What the field is, in the schema's words; nothing for what the schema does not have."""
        found = self._at(path)
        return found.get("description") if found else None

    def choices(self, path):
        """The words that the field accepts; none where it is no word."""
        found = self._at(path)
        return tuple(self._words(found)) if found else ()

    def _at(self, path):
        here = self._document
        for step in path:
            here = self._inside(self._plain(here), step)
            if here is None:
                return None
        return here

    def _plain(self, node):
        """The node itself: references followed, the choice of null left out."""
        while True:
            if "$ref" in node:
                node = self._document["$defs"][node["$ref"].rpartition("/")[2]]
            elif "anyOf" in node and any(one.get("type") == "null" for one in node["anyOf"]):
                node = next(one for one in node["anyOf"] if one.get("type") != "null")
            else:
                return node

    def _inside(self, node, step):
        if isinstance(step, int):
            parts = node.get("prefixItems")
            return parts[step] if parts else node.get("items")
        for one in (node, *node.get("anyOf", ()), *node.get("oneOf", ())):
            properties = self._plain(one).get("properties", {})
            if step in properties:
                return properties[step]
        return None

    def _words(self, node):
        node = self._plain(node)
        if "boolean" in str(node.get("type")):
            return YES_NO
        listed = node.get("enum") or [one["const"] for one in node.get("oneOf", ()) if "const" in one]
        return [str(word) for word in listed if word is not None]
