//! The steps on their own against the plan: asked with a job's own fields, each answers what stands in the job's plan.

use super::folder;
use deck_core::job::{FastenersCall, PanelsCall, SeamsCall};
use deck_core::published::defaults;
use deck_core::{Job, plan};
use serde_json::{Map, Value, json};
use std::path::Path;

/// Every job that can be planned: its name, its fields, and its plan.
fn planned() -> Vec<(String, Value, Value)> {
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/jobs");
    let mut files: Vec<_> = [folder("jobs"), examples]
        .iter()
        .flat_map(|folder| std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()))
        .collect();
    files.sort();
    let plans = files.iter().filter_map(|file| {
        let text = std::fs::read_to_string(file).unwrap();
        let job: Value = serde_json::from_str(&text).unwrap_or_default();
        // What is taken from a survey the steps cannot be asked with: they have none.
        if job["deck"].get("from").is_some() {
            return None;
        }
        let plan = plan(&Job::from_json(&text).ok()?).unwrap();
        let name = file.display().to_string();
        // A deck that is patched has no layout, and a call for fasteners knows of no old holes.
        if text.contains("\"patch\"") || text.contains("\"old_holes\"") {
            return None;
        }
        Some((name, serde_json::from_str(&text).unwrap(), serde_json::from_str(&plan.to_json()).unwrap()))
    });
    plans.collect()
}

/// Those fields of the job that a call has as well, by the same names.
fn same(job: &Value, names: &[&str]) -> Map<String, Value> {
    names.iter().filter_map(|name| Some(((*name).to_owned(), job.get(name)?.clone()))).collect()
}

fn seams(job: &Value) -> Value {
    let names =
        ["unit", "frame", "gap", "end_tolerance", "keep_clear", "openings", "fastening", "saw", "shop", "tolerance"];
    let mut call = same(job, &names);
    // Left out, the call's gap is none, and the job's is the default.
    call.entry("gap").or_insert(Value::Null);
    call.insert("outline".into(), job["deck"].clone());
    call.insert("sheet".into(), job["stock"].clone());
    let layouts = job.pointer("/shop/layouts").cloned().unwrap_or_else(|| defaults::LAYOUTS.value.into());
    call.insert("best".into(), layouts);
    SeamsCall::from_value(&Value::Object(call)).unwrap().document().unwrap()
}

fn panels(job: &Value, outline: &Value, seams: &Value) -> Value {
    let mut call = same(job, &["unit", "openings", "shop"]);
    call.insert("outline".into(), outline.clone());
    call.insert("seams".into(), seams.clone());
    call.insert("thickness".into(), job["stock"][0]["thickness"].clone());
    PanelsCall::from_value(&Value::Object(call)).unwrap().document().unwrap()
}

fn fasteners(job: &Value, outline: Option<&Value>, panels: &Value) -> Value {
    let mut call = same(job, &["unit", "frame", "fastening", "shop"]);
    call.extend(outline.map(|outline| ("outline".to_owned(), outline.clone())));
    call.insert("panels".into(), panels.clone());
    FastenersCall::from_value(&Value::Object(call)).unwrap().document().unwrap()
}

#[test]
fn each_step_on_its_own_is_the_plan_s() {
    let (mut laid_out, mut not, mut arranged) = (0, 0, 0);
    for (name, job, plan) in planned() {
        // Arrangements have no call of their own; the rows of their panels are as any panels'.
        if plan["arrangements"].is_array() {
            arranged += 1;
            for outline in [Some(&job["deck"]), Some(&plan["deck"]), None] {
                assert_eq!(fasteners(&job, outline, &plan["panels"]), plan["fasteners"], "{name}");
            }
            continue;
        }
        let found = seams(&job);
        for field in ["layouts", "no_layout", "proven"] {
            assert_eq!(found[field], plan[field], "{field} of {name}");
        }
        if plan["layouts"] == json!([]) {
            not += 1;
            continue;
        }
        laid_out += 1;
        for outline in [&job["deck"], &plan["deck"]] {
            for seams in [&found, &found["layouts"], &found["layouts"][0]] {
                assert_eq!(panels(&job, outline, seams), plan["panels"], "{name}");
            }
            assert_eq!(fasteners(&job, Some(outline), &plan["panels"]), plan["fasteners"], "{name}");
        }
        assert_eq!(fasteners(&job, None, &plan["panels"]), plan["fasteners"], "{name}");
    }
    assert!(laid_out >= 8 && not >= 2 && arranged >= 4, "{laid_out} with a layout, {not} without, {arranged} arranged");
}
