use super::*;
use crate::money::ThreePoint;
use crate::published::LABOUR_STEPS;

fn money(text: &str) -> Money {
    text.parse().unwrap()
}

fn steps() -> Vec<Task> {
    LABOUR_STEPS.iter().map(|step| Task::new(step.task, step.words, step.hours(), "planning figure")).collect()
}

fn input<'a>(tasks: &'a [Task], terms: &'a Terms) -> QuoteInput<'a> {
    QuoteInput {
        takeoff: None,
        prices: &[],
        materials: &[],
        tasks,
        rate: Some(money("80")),
        correlation: Figure::ZERO,
        distribution: Distribution::Normal,
        charge: ChargeAt::Mean,
        terms,
    }
}

/// The sums of the trade's planning figures: 17.5, 33 and 66 hours, mean 35.9, deviations 2.36 and 8.08.
#[test]
fn the_planning_figures_add_up_as_the_trade_says() {
    let (tasks, terms) = (steps(), Terms::default());
    let labour = quote(&input(&tasks, &terms)).labour;
    assert_eq!(labour.sums, ThreePoint::tenths(175, 330, 660));
    assert_eq!(labour.mean, Figure::scaled(3592, 2));
    assert_eq!(
        (labour.deviation_independent, labour.deviation_shared),
        (Figure::scaled(236, 2), Figure::scaled(808, 2))
    );
    assert_eq!(labour.deviation, labour.deviation_independent);
    // 35.9167 + 0.84162 × 8.0833 and + 1.28155 × 8.0833.
    let shared = labour.percentiles_shared;
    assert_eq!(
        (shared.p50, shared.p80, shared.p90),
        (Figure::scaled(3592, 2), Figure::scaled(4272, 2), Figure::scaled(4628, 2))
    );
}

#[test]
fn a_lognormal_has_the_mean_and_deviation_it_is_made_of() {
    let found = percentiles(35.9167, 8.0833, Distribution::Lognormal);
    // s² = ln(1 + 0.050651) = 0.049410, s = 0.222284; exp(3.581202 − 0.024705) = 35.0402, × exp(0.187079), × exp(0.284868).
    assert_eq!(
        (found.p50, found.p80, found.p90),
        (Figure::scaled(3504, 2), Figure::scaled(4225, 2), Figure::scaled(4659, 2))
    );
}

#[test]
fn lines_add_up_to_the_cent() {
    let hours = |low, likely, high| ThreePoint::new(Figure::of(low), Figure::of(likely), Figure::of(high));
    let mut own = Task::new("fit", "fit", hours(1, 2, 9), "shop");
    own.rate = Some(money("99.99"));
    let tasks = [own, Task::new("test", "test", hours(1, 1, 2), "shop")];
    let terms = Terms {
        overhead_percent: Some(Figure::scaled(125, 1)),
        contingency_percent: Some(Figure::of(10)),
        tax_percent: Some(Figure::scaled(7125, 3)),
        tax_on: TaxOn::Materials,
        disposal: Some(money("120")),
        ..Terms::default()
    };
    let materials = [ExtraMaterial::new("filler, \"grey\"", Figure::scaled(15, 1), "can", money("13.33"))];
    let found = quote(&QuoteInput { materials: &materials, ..input(&tasks, &terms) });
    let amounts: Vec<String> = found.lines.iter().map(|line| line.amount.unwrap().to_string()).collect();
    // 1.5 × 13.33 = 19.995; 3 h × 99.99; 7/6 h = 1.17 × 80; 120; 12.5 % of 533.57 = 66.69625; 10 % of 600.27; 7.125 % of 20.00.
    assert_eq!(amounts, ["20.00", "299.97", "93.60", "120.00", "66.70", "60.03", "1.43"]);
    assert_eq!(found.total, money("661.73"));
    let sums: Money = found.sums.iter().map(|sum| sum.amount).sum();
    assert_eq!(sums, found.total);
    let csv = quote_csv(&found);
    assert!(csv.starts_with(
        "group,description,quantity,unit,rate,amount\r\nmaterials,\"filler, \"\"grey\"\"\",1.5,can,13.33,20.00\r\n"
    ));
    assert!(csv.ends_with("total,Total,,,,661.73\r\n"));
}

#[test]
fn risk_is_a_line_of_its_own_and_what_has_no_price_is_named() {
    let (tasks, terms) = (steps(), Terms::default());
    let charged = quote(&QuoteInput { charge: ChargeAt::P80, correlation: Figure::of(1), ..input(&tasks, &terms) });
    let means: Figure = charged.labour.tasks.iter().map(|task| task.mean).sum();
    assert_eq!(charged.labour.charged_hours, Figure::scaled(4272, 2));
    assert_eq!(charged.labour.risk_hours, Figure::scaled(4272, 2) - means);
    assert!(charged.lines.last().unwrap().description.contains("80th percentile"));
    let free = quote(&QuoteInput { rate: None, ..input(&tasks, &terms) });
    assert_eq!((free.total, free.unpriced.len()), (Money::ZERO, 15));
}
