//! Each `Declare` of `examples/vba/deck.bas` agrees with `deck.h`: there is no VBA here to say so.

use crate::compile::root;
use std::collections::BTreeMap;
use std::fs;

/// How VBA hands over an argument of C on 64-bit Windows.
fn handed(c_type: &str) -> Option<&'static str> {
    // Addresses by value: of a text or buffer in UTF-16, of a plan, of a function, of anything.
    const ADDRESSES: [&str; 7] = [
        "const uint16_t *",
        "uint16_t *",
        "const deck_plan *",
        "deck_plan *",
        "void *",
        "deck_progress",
        "deck_fill_progress",
    ];
    Some(match c_type {
        "int32_t" => "ByVal Long",
        "int64_t" => "ByVal LongLong",
        "double *" => "ByRef Double",
        // A place for a size, or for an address.
        "size_t *" | "deck_plan **" => "ByRef LongPtr",
        _ if c_type == "size_t" || ADDRESSES.contains(&c_type) => "ByVal LongPtr",
        _ => return None,
    })
}

/// What an argument is called there: `Len` is a word of the language.
fn called(c_name: &str) -> &str {
    if c_name == "len" { "units" } else { c_name }
}

/// The functions of the header: their names, and each argument's type and name.
fn functions(header: &str) -> BTreeMap<String, Vec<(String, String)>> {
    let declared = header.split(';').filter_map(|part| part.rsplit_once("\nint32_t ")?.1.split_once('('));
    let functions = declared.map(|(name, arguments)| {
        let arguments =
            arguments.trim_end_matches(')').split(',').map(str::trim).filter(|argument| *argument != "void");
        let arguments = arguments.map(|argument| {
            let name = argument.rsplit([' ', '*']).next().unwrap();
            (argument.strip_suffix(name).unwrap().trim().to_owned(), name.to_owned())
        });
        (name.to_owned(), arguments.collect())
    });
    functions.collect()
}

/// The lines of a module, those that go on put together.
fn lines(module: &str) -> Vec<String> {
    module
        .replace(" _\r\n", " ")
        .replace(" _\n", " ")
        .lines()
        .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "))
        .collect()
}

/// What is wrong with one Declare.
fn fault(declare: &str, functions: &BTreeMap<String, Vec<(String, String)>>) -> Result<String, String> {
    let rest =
        declare.strip_prefix("Public Declare PtrSafe Function ").ok_or("not a public function, safe for 64 bits")?;
    let (name, rest) = rest.split_once(" Lib \"deck_ffi.dll\" (").ok_or("not of the library")?;
    let arguments = rest.strip_suffix(") As Long").ok_or("does not return Long")?;
    let expected = functions.get(name).ok_or(format!("{name} is not in deck.h"))?;
    let given: Vec<&str> = arguments.split(',').map(str::trim).filter(|argument| !argument.is_empty()).collect();
    if given.len() != expected.len() {
        return Err(format!("{name} has {} arguments, not {}", expected.len(), given.len()));
    }
    for (given, (c_type, c_name)) in given.iter().zip(expected) {
        let handed = handed(c_type).ok_or(format!("{name}: VBA has nothing for {c_type} {c_name}"))?;
        let (how, width) = handed.split_once(' ').unwrap();
        let expected = format!("{how} {} As {width}", called(c_name));
        if **given != expected {
            return Err(format!("{name}: {given} where deck.h asks for {expected}"));
        }
    }
    Ok(name.to_owned())
}

fn read(path: &str) -> String {
    fs::read_to_string(root().join(path)).unwrap()
}

#[test]
fn every_declare_agrees_with_the_header() {
    let (functions, module) = (functions(&read("deck-ffi/include/deck.h")), read("examples/vba/deck.bas"));
    let declares = lines(&module).into_iter().filter(|line| line.contains("Declare ") && !line.starts_with('\''));
    let declared: Vec<String> = declares.map(|line| fault(&line, &functions).unwrap()).collect();
    assert!(declared.len() > 20);
    for name in functions.keys() {
        // The head of the module gives the reason for those that are not declared.
        let times = declared.iter().filter(|declared| *declared == name).count();
        let spared = functions.contains_key(&format!("{name}_utf16"));
        assert_eq!(times, usize::from(!spared), "{name}");
    }
    assert!(module.contains("Only the functions in UTF-16 are declared for text") && module.contains("Not run here"));
}

#[test]
fn constants_have_the_header_s_numbers() {
    let (header, module) = (read("deck-ffi/include/deck.h"), lines(&read("examples/vba/deck.bas")));
    let constants = module.iter().filter_map(|line| line.strip_prefix("Public Const DECK_")?.split_once(" As Long = "));
    let mut compared = 0;
    for (name, number) in constants.filter(|(name, _)| *name != "FAILED") {
        assert!(header.contains(&format!("#define DECK_{name} {number}\n")), "DECK_{name}");
        compared += 1;
    }
    assert!(compared >= 4);
}

/// Every Declare and every use of a name stays within what VBA takes.
#[test]
fn the_module_keeps_to_the_language() {
    let module = read("examples/vba/deck.bas");
    assert!(module.is_ascii() && module.lines().all(|line| line.len() < 1023));
    let used = lines(&module).join("\n");
    for name in used.split(|letter: char| !letter.is_ascii_alphanumeric() && letter != '_') {
        let function = name.starts_with("deck_") && !["deck_ffi"].contains(&name);
        assert!(!function || used.contains(&format!("Function {name} Lib")), "{name} is used and not declared");
    }
    for (open, close) in [("Function", "End Function"), ("Sub", "End Sub")] {
        let starts =
            |line: &&str| ["Public ", "Private "].iter().any(|scope| line.starts_with(&format!("{scope}{open} ")));
        assert_eq!(used.lines().filter(starts).count(), used.lines().filter(|line| *line == close).count(), "{open}");
    }
}

/// The comparison sees what a hand gets wrong.
#[test]
fn a_wrong_declare_is_seen() {
    let functions = functions(&read("deck-ffi/include/deck.h"));
    let good = "Public Declare PtrSafe Function deck_plan_number_utf16 Lib \"deck_ffi.dll\" (ByVal plan As LongPtr, \
                ByVal json_pointer As LongPtr, ByVal units As LongLong, ByRef value As Double) As Long";
    assert_eq!(fault(good, &functions), Ok("deck_plan_number_utf16".into()));
    for (right, wrong) in [
        ("ByVal units As LongLong", "ByVal units As Long"),
        ("ByRef value As Double", "ByVal value As Double"),
        ("ByVal json_pointer As LongPtr", "ByVal json_pointer As String"),
        ("ByVal plan As LongPtr, ", ""),
        ("ByVal plan", "ByRef plan"),
        ("plan_number", "plan_nomber"),
        ("PtrSafe ", ""),
        (") As Long", ") As LongLong"),
    ] {
        assert!(fault(&good.replacen(right, wrong, 1), &functions).is_err(), "{wrong}");
    }
}
