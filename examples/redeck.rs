//! Plans a boat.
fn main() {
    for path in std::env::args().skip(1) {
        let text = std::fs::read_to_string(&path).expect("file");
        let job = match deck_core::Job::from_json(&text) {
            Ok(j) => j,
            Err(e) => {
                println!("{e}");
                continue;
            }
        };
        let t = std::time::Instant::now();
        let plan = deck_core::plan(&job).expect("plan");
        println!("{path}: {:?}", t.elapsed());
        std::fs::write(format!("/tmp/{}.plan.json", job.name.replace(' ', "_")), plan.to_json()).expect("w");
        for l in &plan.layouts {
            println!("  {:?} {:?}", l.seams.iter().map(|s| s.fore.as_inches()).collect::<Vec<_>>(), l.cost);
        }
        if let Some(n) = &plan.no_layout {
            println!("{n:#?}");
        }
        if let Some(f) = &plan.fasteners {
            println!("  fasteners {}", f.count);
        }
        if let Some(f) = &plan.sheets {
            println!("  sheets {} cost {:?} proven {}", f.sheet_count, f.cost, f.proven);
        }
        for c in plan.cautions.iter().filter(|c| !c.about.is_empty()) {
            println!("  ! {} {:?}", c.id, c.about);
        }
        let back = deck_core::Plan::from_json(&plan.to_json()).expect("reread");
        assert_eq!(back.to_json(), plan.to_json());
    }
}
