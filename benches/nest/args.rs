//! The words after the command.

use deck_core::nest::Effort;
use std::path::{Path, PathBuf};

pub(crate) const HELP: &str = "\
nest [SECTION ...] [OPTION ...]

sections
  classes    ten classes of bin packing: sums of sheets and of bounds, fixed and turned
  furniture  a furniture maker's panels
  demand     one cutting-stock order of hundreds of copies
  fill       one sheet, most value: sets with limited and with unlimited copies
  feasible   does all of it fit one sheet?
  several    six sizes of sheet, few of each
  growth     random orders of growing size: time, memory, distance from the bound; best with --effort quick
  growth-one one size of it in this process; its figures as a line
  serve      questions from standard input, one JSON object a line

options
  --data DIR      folder of the instances (or DECK_PACKING_DATA; default: ../shared/data/packing beside the workspace)
  --effort WORD   quick, standard (default), thorough, or a number of steps
  --turn WORD     fixed, turned, or both (default)
  --only TEXT     instances whose name contains TEXT
  --every N       one instance in N
  --start K       beginning with the K-th (from 0; default 0)
  --log FILE      one line an instance, appended; instances that it holds already are taken from it, not run again
  --list          name the instances that miss the best known answer or bound (classes, fill)
  --sizes N,...   numbers of parts for growth (default 100,1000,10000,100000)
  --kerf LENGTH   for growth-one (default 0 in)";

/// What to run, and on what.
#[derive(Debug, Clone)]
pub(crate) struct Args {
    pub(crate) sections: Vec<String>,
    pub(crate) data: PathBuf,
    pub(crate) effort: Effort,
    pub(crate) turns: Vec<bool>,
    pub(crate) only: String,
    pub(crate) every: usize,
    pub(crate) start: usize,
    pub(crate) log: Option<PathBuf>,
    pub(crate) list: bool,
    pub(crate) sizes: Vec<u32>,
    pub(crate) kerf: String,
}

impl Args {
    /// Reads the words; `--bench` comes from cargo and says nothing.
    pub(crate) fn read(words: impl Iterator<Item = String>) -> Result<Args, String> {
        let mut args = Args {
            sections: Vec::new(),
            data: data_folder(),
            effort: Effort::Standard,
            turns: vec![false, true],
            only: String::new(),
            every: 1,
            start: 0,
            log: None,
            list: false,
            sizes: vec![100, 1_000, 10_000, 100_000],
            kerf: "0 in".to_owned(),
        };
        let mut words = words.filter(|word| word != "--bench");
        while let Some(word) = words.next() {
            match word.as_str() {
                "help" | "--help" => args.sections.clear(),
                "--list" => args.list = true,
                option if option.starts_with("--") => {
                    let value = words.next().ok_or_else(|| format!("{option} wants a value.\n{HELP}"))?;
                    args.set(option, &value)?;
                }
                section => args.sections.push(section.to_owned()),
            }
        }
        Ok(args)
    }

    fn set(&mut self, option: &str, value: &str) -> Result<(), String> {
        match option {
            "--data" => self.data = PathBuf::from(value),
            "--effort" => self.effort = effort(value)?,
            "--turn" => self.turns = turns(value)?,
            "--only" => value.clone_into(&mut self.only),
            "--every" => self.every = count(option, value)?.max(1),
            "--start" => self.start = count(option, value)?,
            "--sizes" => self.sizes = sizes(value)?,
            "--kerf" => value.clone_into(&mut self.kerf),
            "--log" => self.log = Some(PathBuf::from(value)),
            _ => return Err(format!("\"{option}\" is no option.\n{HELP}")),
        }
        Ok(())
    }

    /// The instances that the options leave.
    pub(crate) fn chosen<T>(&self, all: Vec<T>, name: impl Fn(&T) -> &str) -> Vec<T> {
        let named = all.into_iter().filter(|instance| name(instance).contains(&self.only));
        named.skip(self.start).step_by(self.every).collect()
    }

    pub(crate) fn effort_text(&self) -> String {
        match self.effort {
            Effort::Quick => "quick".to_owned(),
            Effort::Standard => "standard".to_owned(),
            Effort::Thorough => "thorough".to_owned(),
            Effort::Steps(steps) => format!("{steps} steps"),
            _ => "another effort".to_owned(),
        }
    }
}

pub(crate) fn effort(word: &str) -> Result<Effort, String> {
    match word {
        "quick" => Ok(Effort::Quick),
        "standard" => Ok(Effort::Standard),
        "thorough" => Ok(Effort::Thorough),
        steps => count("--effort", steps).map(|steps| Effort::Steps(steps as u64)),
    }
}

fn turns(word: &str) -> Result<Vec<bool>, String> {
    match word {
        "fixed" => Ok(vec![false]),
        "turned" => Ok(vec![true]),
        "both" => Ok(vec![false, true]),
        _ => Err(format!("--turn is fixed, turned or both, not \"{word}\"")),
    }
}

fn sizes(list: &str) -> Result<Vec<u32>, String> {
    let size = |word: &str| u32::try_from(count("--sizes", word)?).map_err(|_| format!("--sizes: {word} is too many"));
    list.split(',').map(size).collect()
}

fn count(option: &str, value: &str) -> Result<usize, String> {
    value.replace('_', "").parse().map_err(|_| format!("{option} wants a whole number, not \"{value}\""))
}

fn data_folder() -> PathBuf {
    let beside = || Path::new(env!("CARGO_MANIFEST_DIR")).join("../../shared/data/packing");
    std::env::var_os("DECK_PACKING_DATA").map_or_else(beside, PathBuf::from)
}
