//! The refit demo against counts and sums by hand.

use deck_core::money::{Figure, Money};
use deck_core::quote::Group;
use deck_core::{Job, Plan, plan};

fn refit() -> Plan {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/jobs/refit-24.json");
    plan(&Job::from_json(&std::fs::read_to_string(path).unwrap()).unwrap()).unwrap()
}

fn money(text: &str) -> Money {
    text.parse().unwrap()
}

#[test]
fn the_strip_out_counts_what_was_counted() {
    let found = refit().strip_out.unwrap();
    // 84 + 11 + 5 screws, 8 + 2 bolts.
    assert_eq!(found.fastener_count.likely, Figure::of(110));
    // 96 in in strips of at most 14 in.
    assert_eq!((found.covering.count, found.boards.count), (7, 6));
    // 84 × 0.4, 11 × 3, 5 × 1.2, 8 × 1.5 × 2, 2 × 3 minutes, each line in hundredths of an hour.
    let hours: Vec<String> = found.fasteners.iter().map(|line| line.hours.likely.to_string()).collect();
    assert_eq!(hours, ["0.56", "0.55", "0.1", "0.4", "0.1"]);
    // 1.5 for the covering, 1.71 for fasteners, six boards at 20 minutes.
    assert_eq!(found.total_hours.likely, Figure::scaled(521, 2));
    // 192 ft² less the notch (4.44), bow corners (2 × 21.46 in² of 100), hatch (2.5) and hole: about 184.5 at 2.3 lb/ft².
    assert!((found.boards.dry_lb - 424.5).abs() < 1.0, "{}", found.boards.dry_lb);
    // 0.04 in of an eighth in 16 years: 0.085 is left, for 34 years.
    let pit = &found.pits[0];
    assert_eq!((pit.years_left, pit.left), (Figure::of(34), super::inches("0.085")));
}

#[test]
fn the_ledger_balances() {
    let plan = refit();
    let weights = plan.weights.as_ref().unwrap();
    // The new boards weigh what the old ones do, dry: the same outline, openings and thickness.
    let old = plan.strip_out.as_ref().unwrap();
    let new: f64 = plan.takeoff.as_ref().unwrap().deck_weight_lb;
    assert!((new - old.boards.dry_lb).abs() < 0.5, "{new} {}", old.boards.dry_lb);
    // What is net is the covering, 0.45 off and 0.4 lb/ft² on over the same area, and the difference of the screws.
    let screws: f64 = weights.lines.iter().filter(|line| line.what.contains("fasteners")).map(|line| line.pounds).sum();
    let covering = old.disposal.covering_lb.unwrap() / 9.0;
    assert!((weights.net_lb + covering).abs() < screws, "{}", weights.net_lb);
    assert!((weights.net_lb - (weights.added_lb - weights.removed_lb)).abs() < 0.11);
}

#[test]
fn the_quote_adds_up_by_hand() {
    let quote = refit().quote.unwrap();
    let amount = |group: Group| quote.sums.iter().find(|sum| sum.group == group).unwrap().amount;
    let lines: Money = quote.lines.iter().filter_map(|line| line.amount).sum();
    assert_eq!(lines, quote.total);
    let (materials, labour) = (amount(Group::Materials), amount(Group::Labour));
    let before = materials + labour + money("140") + money("85");
    assert_eq!(amount(Group::Overhead), before.percent(Figure::scaled(125, 1)));
    let above = before + amount(Group::Overhead);
    assert_eq!(amount(Group::Contingency), above.percent(Figure::of(5)));
    assert_eq!(amount(Group::Tax), materials.percent(Figure::scaled(625, 2)));
    assert_eq!(quote.total, above + amount(Group::Contingency) + amount(Group::Tax));
    // Six sheets at 97.40, 48.5 ft of trim at 3.35 and two tubs at 16.90.
    let said = |words: &str| quote.lines.iter().find(|line| line.description.contains(words)).unwrap().amount.unwrap();
    assert_eq!((said("3/4 ply"), said("trim"), said("filler")), (money("584.40"), money("162.48"), money("33.80")));
    // The frame is the shop's own, 1.5/3/8 at 105: a mean of 21.5/6, 3.58 hours.
    assert_eq!(said("frame repair"), money("375.90"));
    // What was reckoned on the strip-out sheet stands in for the planning figure.
    let task = |name: &str| quote.labour.tasks.iter().find(|task| task.task == name).unwrap();
    assert_eq!(task("boards").likely, Figure::scaled(371, 2));
    assert!(quote.changes.iter().any(|words| words.starts_with("M8 corroded")));
    assert!(quote.labour.risk_hours > Figure::ZERO && quote.unpriced.is_empty());
}
