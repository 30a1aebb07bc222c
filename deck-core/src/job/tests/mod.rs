//! Tests of the job.
#[test]
fn dump() {
    println!("{}", serde_json::to_string_pretty(&super::schema()).unwrap());
}
