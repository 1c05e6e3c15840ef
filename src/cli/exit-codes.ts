/** What the process ends with, and the words for it in the help. */
export const EXIT = {
  done: 0,
  stopped: 1,
  badScenario: 2,
  badUsage: 3,
  unreadable: 4,
  nothingToAnswer: 5,
  interrupted: 130,
} as const;

export const EXIT_HELP = `Exit codes
  0  done; every run came to its end. A sweep or a sample says in its lines how each run ended
  1  a run stopped before its end (boiling, freezing, no air flow): the answer says when and why
  2  the scenario has errors; each is listed with its path
  3  the command itself is wrong
  4  a file cannot be read or written
  5  the file has nothing to answer this with (no pull, no rest, no upgrades): what is missing is said
  130  a sweep was ended by Ctrl-C: its lines are kept, and the same command goes on from there`;
