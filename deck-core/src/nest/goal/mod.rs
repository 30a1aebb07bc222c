//! experimental
mod slicing;
use super::bound::Bound;
use super::build::{Pattern, Solution, cost};
use super::choose::Best;
use super::effort::Steps;
use super::problem::Problem;
use super::random::SplitMix;
use slicing::{Fit, Room, Slicing};

fn env(name: &str, default: f64) -> f64 { std::env::var(name).ok().and_then(|s| s.parse().ok()).unwrap_or(default) }

pub(super) struct Goal<'p> {
    problem: &'p Problem,
    rooms: Vec<Room>,
    areas: Vec<f64>,
    unit: f64,
    sheets: Vec<Slicing>,
    absent: Vec<u32>,
    weights: Vec<f64>,
    stock: Vec<u32>,
    budget: i128,
    random: SplitMix,
    cfg: Cfg,
    temp: f64,
}
#[derive(Clone, Copy)]
struct Cfg { t0: f64, t1: f64, even: f64, wstep: f64, full: f64, partial: f64, maxk: usize, swap: usize, blink: f64 }

pub(super) fn reach(problem: &Problem, best: &mut Best<'_>, steps: &mut Steps, bound: &Bound) {
    let cfg = Cfg { t0: env("T0", 0.02), t1: env("T1", 0.002), even: env("EVEN", 0.1), wstep: env("WSTEP", 0.0), full: env("FULL", 0.5), partial: env("PART", 0.5), maxk: env("MAXK", 3.0) as usize, swap: env("SWAP", 4.0) as usize, blink: env("BLINK", 0.02) };
    loop {
        let Some((unplaced, cost)) = best.value() else { return };
        if steps.spent_all() || bound.met_by(unplaced, cost) { return; }
        let Some(solution) = best.solution() else { return };
        let mut goal = Goal::new(problem, solution, cfg);
        if goal.sheets.is_empty() { return; }
        match goal.run(steps) {
            Some(solution) => { if !best.offer(solution) { return; } steps.found_better(); }
            None => return,
        }
    }
}

impl<'p> Goal<'p> {
    fn new(problem: &'p Problem, solution: &Solution, cfg: Cfg) -> Goal<'p> {
        let mut stock: Vec<u32> = problem.racks.iter().map(|rack| rack.count).collect();
        let rooms: Vec<Room> = problem.racks.iter().map(|rack| Room { size: rack.size, stages: problem.stages, first: problem.first }).collect();
        let unit = rooms.iter().map(|r| r.size.0 as f64 * r.size.1 as f64).fold(1.0, f64::max);
        let areas: Vec<f64> = problem.classes.iter().map(|c| c.size.0 as f64 * c.size.1 as f64 / unit).collect();
        let mut sheets = Vec::new();
        for (pattern, times) in &solution.runs {
            for _ in 0..*times {
                stock[pattern.rack] -= 1;
                let room = rooms[pattern.rack];
                let sizes = |class: u32, piece: super::problem::Size| {
                    let class = &problem.classes[class as usize];
                    class.lies(&problem.racks[pattern.rack]).into_iter().flatten().find(|s| *s == piece).unwrap_or(class.size)
                };
                let mut s = Slicing::of(pattern, sizes, room.size);
                s.filled = s.classes().map(|c| areas[c as usize]).sum();
                sheets.push(s);
            }
        }
        let mut absent = Vec::new();
        // the thinnest sheet goes
        if let Some(thin) = (0..sheets.len()).filter(|&i| cost(problem, sheets[i].rack) > 0).min_by(|&a, &b| sheets[a].filled.total_cmp(&sheets[b].filled)) {
            let s = sheets.swap_remove(thin);
            stock[s.rack] += 1;
            absent.extend(s.classes());
        }
        let spent: i128 = sheets.iter().map(|s| cost(problem, s.rack)).sum();
        let weights = vec![1.0; areas.len()];
        Goal { problem, rooms, areas, unit, sheets, absent, weights, stock, budget: solution.cost - 1 - spent, random: SplitMix::new(), cfg, temp: cfg.t0 }
    }
    fn frand(&mut self) -> f64 { self.random.below(1 << 30) as f64 / (1u64 << 30) as f64 }

    fn run(&mut self, steps: &mut Steps) -> Option<Solution> {
        let total = steps.left() as f64;
        let mut iters = 0u64;
        while !steps.spent_all() {
            iters += 1;
            if iters % 64 == 0 {
                let part = 1.0 - steps.left() as f64 / total;
                self.temp = self.cfg.t0 * (self.cfg.t1 / self.cfg.t0).powf(part);
            }
            self.step(steps);
            if self.absent.is_empty() {
                if std::env::var("DBG").is_ok() { eprintln!("found after {iters} iters left {}", steps.left()); }
                return Some(self.solution());
            }
        }
        if std::env::var("DBG").is_ok() { eprintln!("not found: {iters} iters absent {:?} {:?}", self.absent.len(), self.absent.iter().map(|&c| self.areas[c as usize]).sum::<f64>()); }
        None
    }
    fn solution(&self) -> Solution {
        let runs: Vec<(Pattern, u32)> = self.sheets.iter().filter(|s| !s.is_empty()).map(|s| (s.pattern(self.problem, self.rooms[s.rack]), 1)).collect();
        let cost = runs.iter().map(|(p, _)| cost(self.problem, p.rack)).sum();
        Solution { runs, left: vec![0; self.problem.classes.len()], cost }
    }
    fn worth(&self, sheets: &[usize]) -> f64 {
        let absent: f64 = self.absent.iter().map(|&c| self.areas[c as usize] * self.weights[c as usize]).sum();
        let even: f64 = sheets.iter().map(|&s| { let free = 1.0 - self.sheets[s].filled; free * free }).sum();
        absent - self.cfg.even * even
    }
    fn step(&mut self, steps: &mut Steps) {
        let n = self.sheets.len();
        let k = (1 + self.random.below(self.cfg.maxk)).min(n);
        let mut chosen: Vec<usize> = Vec::with_capacity(k);
        while chosen.len() < k { let s = self.random.below(n); if !chosen.contains(&s) { chosen.push(s); } }
        let before = self.worth(&chosen);
        let saved: Vec<Slicing> = chosen.iter().map(|&s| self.sheets[s].clone()).collect();
        let saved_absent = self.absent.clone();
        let mut pool: Vec<u32> = std::mem::take(&mut self.absent);
        let full = self.frand() < self.cfg.full;
        for &s in &chosen {
            let random = &mut self.random;
            let p = if full { 1.0 } else { self.cfg.partial };
            let cut = (p * (1u64 << 20) as f64) as usize;
            let areas = &self.areas;
            let mut gone = 0.0;
            self.sheets[s].take_out(|| random.below(1 << 20) < cut, |c| { pool.push(c); gone += areas[c as usize]; });
            if !self.sheets[s].is_empty() { self.sheets[s].filled -= gone; }
        }
        // order
        let kind = self.random.below(6);
        let problem = self.problem;
        let key = |c: u32| { let (w, h) = problem.classes[c as usize].size; let (w, h) = (w as f64, h as f64); match kind { 0 | 1 => w * h / self.unit, 2 => w.max(h), 3 => w.min(h), 4 => w, _ => h } };
        let mut keyed: Vec<(f64, u32)> = pool.iter().map(|&c| (key(c), c)).collect();
        keyed.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for i in 0..keyed.len() { let j = (i + self.random.below(self.cfg.swap)).min(keyed.len() - 1); keyed.swap(i, j); }
        let fit = [Fit::Side, Fit::Piece, Fit::Group][self.random.below(3)];
        let mut spent = 0;
        let seq = self.random.below(2) == 0;
        for (_, c) in keyed {
            let mut best: Option<(usize, slicing::Place)> = None;
            let mut limit = f64::INFINITY;
            let class = &problem.classes[c as usize];
            let need = self.areas[c as usize];
            for &s in &chosen {
                let sheet = &self.sheets[s];
                if 1.0 - sheet.filled < need - 1e-9 { continue; }
                spent += sheet.len() as u64 * 2 + 1;
                let lies = class.lies(&problem.racks[sheet.rack]);
                if let Some(place) = sheet.best_place(self.rooms[sheet.rack], lies, fit, limit) {
                    if self.cfg.blink > 0.0 && best.is_none() && self.random.below(1000) < (self.cfg.blink * 1000.0) as usize { continue; }
                    limit = place.waste; best = Some((s, place));
                    if seq { break; }
                }
            }
            match best { Some((s, place)) => self.sheets[s].put(place, c, need), None => self.absent.push(c) }
        }
        steps.spend(spent + 16);
        let after = self.worth(&chosen);
        let u = self.frand().max(1e-9);
        if after <= before - self.temp * u.ln() || self.absent.is_empty() {
            if self.cfg.wstep > 0.0 && !self.absent.is_empty() {
                for &c in &self.absent { self.weights[c as usize] += self.cfg.wstep; }
            }
            return;
        }
        for (&s, old) in chosen.iter().zip(saved) { self.sheets[s] = old; }
        self.absent = saved_absent;
    }
}
