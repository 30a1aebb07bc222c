//! Leaves the packet in a folder: the plan, the drawings, and one PDF for the shop.

use deck_core::{Plan, draw};
use std::path::Path;

/// Writes everything and says what was written.
pub(crate) fn write(plan: &Plan, folder: &Path) -> Result<String, String> {
    let told = |path: &Path, error: &std::io::Error| format!("{}: {error}", path.display());
    std::fs::create_dir_all(folder).map_err(|error| told(folder, &error))?;
    let save = |name: &str, bytes: &[u8]| {
        let path = folder.join(name);
        std::fs::write(&path, bytes).map_err(|error| told(&path, &error))
    };
    save("plan.json", plan.to_json().as_bytes())?;
    let packet = draw::packet(plan, plan.basis.paper).map_err(|error| error.to_string())?;
    save("packet.pdf", &packet)?;
    let views = draw::views(plan);
    for view in &views {
        let drawing = draw::svg(plan, view).map_err(|error| error.to_string())?;
        save(&format!("{view}.svg"), drawing.as_bytes())?;
    }
    Ok(format!("Written to {}: plan.json, packet.pdf and {} drawings (SVG).", folder.display(), views.len()))
}
