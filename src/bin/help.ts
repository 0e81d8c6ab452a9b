/** The options of the command, in the order of the help. */
export const OPTIONS = [
  'baseline',
  'candidate',
  'range',
  'worthwhile',
  'by',
  'speeds',
  'logged',
  'at',
  'order',
  'settled',
  'swept-volume',
  'boost-control',
  'leave-out',
  'overrule',
  'confidence',
  'outliers',
  'options',
  'units',
  'report',
  'repeat',
  'help',
] as const;

export const HELP = `Compares set-ups from the logs of their pulls: how large the difference is, how sure, and why.

  coldside FOLDER                              one sub-folder for each set-up, one log for each pull
  coldside --baseline A... --candidate B...    the logs of two set-ups
  coldside --repeat day.record.json FOLDER     does a recorded analysis again and says whether it comes out the same

  --baseline NAME         with a folder: the set-up the others are compared with (else the first of the day)
  --candidate NAME...     with a folder: only these
Set before looking
  --range 3500-6500       engine speeds to average over, in rpm (else all that the pulls share)
  --worthwhile "2 kW"     the smallest difference worth having; nothing is called equivalent without it
  --by torque             power, torque, "air flow" or "air per cycle"
  --speeds 4000 5000      speeds at which the difference is quoted too
  --confidence 0.9        chance that the intervals hold the truth (else 0.95)
About the pulls
  --logged observed       whether logged power is observed or corrected
  --at "at the hub"       where torque was measured, for the words of the answer
  --order NAME...         the set-up of each pull in the order they were made, where the logs have no clock
  --settled cut           cut the start, where boost still builds up, off a given range too; or: leave in
  --swept-volume "1.8 L"  of all cylinders: lets a mean effective pressure that no engine reaches be asked about
  --boost-control open    whether boost followed the wastegate (open) or was held to a target (closed)
  --leave-out "tall core/pull 2.csv=missed the gear"        a pull left out, with the reason; overruled: --overrule
  --outliers missing      takes readings that jump out of the others out, and counts them
  --options FILE.json     everything else: instruments, limits, lags, and which column is what, such as
      { "reading": { "channels": { "boost": { "header": "Boost", "kind": "gauge pressure", "unit": "kPa" } } },
        "given": { "limits": { "boost": { "quantity": "pressure difference", "value": 8, "unit": "kPa" } } } }
What comes out
  --units us              si, metric or us
  --report FILE           .html or .md (else coldside-report.html); its record goes beside it
Exit code: 0 with a verdict, 1 without any (too little, or something to settle first), 2 for a wrong command line.

Dynamometers, fuel and hot or pressurised parts can injure: follow local codes and leave the work to licensed people.`;

/** What stands under a complaint about the command line: short, so that the complaint stays on the screen. */
export const USAGE = `Use: coldside FOLDER, or coldside --baseline A... --candidate B...
coldside --help lists the options.`;
