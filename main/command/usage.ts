/** What --help prints. Lines of 100 characters at most. */
export const USAGE = `npm run --silent score -- <capture> [more captures] [flags]

Reads recorded captures, marks or suggests windows, and judges the converter. No window is opened.
- as a capture reads standard input. A bundle for a second reader (.tailtrace-bundle) in the place of a
capture is checked first, file by file; then each capture in it is judged with the windows, columns,
codes and temperatures of its record, where no flag gives others, and the findings that came with it
stand beside those that are worked out here.

  --json                 one JSON object per capture on standard output, one a line, and nothing else
  --window A..B          score this stretch instead of the suggested ones; may be repeated.
                         Seconds from the capture's start (61.2..121.2), or clock times
                         (14:03:10..14:04:10, 2026-11-24T14:03:10..2026-11-24T14:04:10)
  --inlet 290F --outlet 385F
                         surface temperatures at the converter, in F, C or K;
                         repeated as pairs for further converters along the exhaust
  --bank 1               only this bank, 1 or 2
  --columns FILE         a JSON file that says which column is what, where guessing is not enough
  --sheet FILE           also write the evidence sheet: .html, .csv, .json, .md, or .pdf where Electron is present
  --trouble-codes P0420,P0171
                         trouble codes found on the vehicle; they join the evidence
  --describe             read the captures and tell what is in them; score nothing
  --help                 this text
  --version              the version

Exit status: 0 every capture was read and judged; 2 a flag makes no sense; 3 a capture could not be read,
or a bundle was changed (the others are still judged, the reason goes to standard error).

A columns file: { "columns": [ { "name": "O2 front", "role": "upstreamO2", "bank": 1, "unit": "V" },
{ "name": "t", "role": "time" } ], "rateHz": null }; columns by "name" or by "index" from 0.
It may also list repairs of the times that are not to be made: "asWritten": [ "duplicateTimes" ], of
clockPastMidnight, secondRecording, clockJumpedBack, outOfOrder, duplicateTimes.
Roles: upstreamO2, upstreamLambda, downstreamO2, rpm, coolant, stft, ltft, maf, load, speed, throttle, fuelStatus,
catalystTemp, intakeAir, other, time, ignore.
`;
