export const HELP = `sheetwright: from a brief to a finished drawing

  sheetwright draw BRIEF...     draw the sheet: PDF, SVG, STEP and a report
  sheetwright draw PART.step    draw a solid model: views, centre lines, measured sizes
  sheetwright begin PART.step   write the first lines of a brief from a solid model
  sheetwright report BRIEF...   mass, size, views, dimensions and marks; draws nothing
  sheetwright check BRIEF...    what a checker would pencil on the sheet, rule by rule
  sheetwright stack BRIEF       what lies between two faces, from the sizes of its loop
  sheetwright tidy BRIEF...     print the brief in its canonical form
  sheetwright open [BRIEF]      write and read in the browser, the sheet beside the brief
  sheetwright help [COMMAND]    this page, or more about one command

A brief is a text file that says what the part is in a drafter's own callouts:

  part      Cable clip plate
  number    CC-0104   rev A
  units     mm
  practice  ISO
  material  steel S235JR
  general   ISO 2768-m
  plate     60 long × 40 wide × 6 thick, face front
  holes     front: 2X ⌀6.6 THRU
            2 across 40 apart, centred; 20 from bottom

Save that as clip.brief, then:   sheetwright draw clip.brief --to out/

docs/language.md has every statement with an example; examples/ has whole parts.
`

export const COMMAND_HELP: Readonly<Record<string, string>> = {
  draw: `sheetwright draw FILE... [--to FOLDER] [--only KINDS] [--solid PART]

Draws each brief or solid model and writes NAME.pdf, NAME.svg, NAME.step and NAME.txt (the report).
NAME is the file's name without its ending, or the part's number for standard input.

  FILE             a brief, or a solid model (.step, .stp: AP203, AP214, AP242), or - for
                   standard input; several are drawn one after the other, and one that
                   fails does not stop the others
  --to FOLDER      where to write; made if absent. Without it: beside the brief
  --only KINDS     some of pdf,svg,step,txt
  --solid PART     of a solid model only this part: its product's name, or its place from 1;
                   it is written as NAME-PART. Without it an assembly is drawn whole
  --quiet          say nothing but marks and faults

A solid model is measured: holes, slots, arcs and steps are recognised and sized, without
tolerances. The model itself is not written again unless --only asks for step.

A sheet whose sizes are not proven complete, on which no tolerance is stated, or with marks that
must change, is stamped PRELIMINARY, and carries neither the checker's name nor the approver's.
The line about the files then says how many marks must change and how many statements are not
drawn.
`,
  begin: `sheetwright begin FILE... [--to FOLDER] [--solid PART] [--print]

Writes NAME.brief from a solid model (.step, .stp): what it is made from, its holes, slots,
steps, chamfers and rounds with the sizes measured, in statements that a drafter goes on with.
The brief is built and compared with the model, and the answer says whether it is the same part;
faces that no statement covers are listed in it as comments. Tolerances, material and notes are
not in a model's shape: they are left to say. A brief that is there is never written over.

  --to FOLDER      where to write; made if absent. Without it: beside the model
  --solid PART     of an assembly the part meant: its product's name, or its place from 1
  --print          print the brief instead of writing it
`,
  report: `sheetwright report FILE... [--json] [--solid PART]

Prints mass, volume, centre of gravity, overall size, sheet and scale, the views with the
counts and lengths of their visible, hidden and centre lines, every size, the proof that the
sizes define the part, and all marks.

  --json           as JSON: one object, or a list when several files are named; lengths, areas
                   and volumes in the brief's "units", mass in "massUnits", the sheet's own
                   width and height in mm, angles in degrees
  --solid PART     of a solid model only this part
`,
  check: `sheetwright check BRIEF... [--json] [--csv] [--strict] [--to FOLDER]

Goes over each drawing as a checker does: everything the program noticed on the way, and its
rules (docs/rules.md) about completeness, drafting practice, making, fitting, handling and
tolerances. Each mark gives its place, what was expected, the rule and its source, and the
statement that would accept it as it is; put the reason in place of the dots.

  --json           as JSON, one list over all briefs
  --csv            as CSV with a heading
  --strict         exit 1 also where a mark says look again
  --to FOLDER      write the check print NAME-check.pdf there: the sheet with its marks
`,
  stack: `sheetwright stack BRIEF [--between "A" "B"] [--with OTHER --mating "A" "B"] [options]

Finds the loop of sizes from one face or axis to another and adds it up: each size with its
line, tolerance and how much it counts; worst case, root-sum-square and a simulation; what
each size contributes, and which to tighten. Without --between: every stack the brief states.

  --between "A" "B"   faces, holes, steps by their names (docs/language.md); with edge the
                      surface of a round: --between "hole A edge" "left"
  --along WAY         left-right, front-rear or up-down, where the two leave it open
  --min N, --max N    the limits asked, in the brief's unit; --rss holds them by root-sum-square
  --bonus             the bonus of material conditions (MMC, LMC) counts beside the zones
  --with OTHER        another brief, of a part that meets this one; the second word of
                      --between is then a face or axis of that part
  --mating "A" "B"    where they meet: a face of this part and one of the other against each
                      other, or a round of one in a round of the other, with its play
  --samples N         simulated parts, 1000000 without it;  --seed N  the same seed, the same result
  --to FOLDER         write the chart there: shares as bars, and the histogram (SVG)
  --json              as JSON, lengths in mm

Exit 1 also where a stack does not keep to its limits.
`,
  tidy: `sheetwright tidy BRIEF... [--write]

Prints the brief in canonical form: same statements, same digits, aligned.

  --write          put the tidy text back into the file instead of printing it
  --check          print nothing; exit 1 where a brief is not tidy
`,
  open: `sheetwright open [BRIEF] [--port N] [--host H] [--token T] [--no-browser]

Serves the page on this machine, prints its address and opens the browser where there is one.
Without a brief it opens at an example; briefs are saved in the brief's folder, or in the
current one. Runs until it is stopped with Ctrl-C.

  --port N         the port; without it the first free one from 4180
  --host H         listen on another address than 127.0.0.1; then a token is needed
  --token T        the token, at least 12 letters or digits; made up where none is given
  --no-browser     only print the address
`,
}

export const EXIT_HELP = `Exit codes
  0    done
  1    done as far as it went, but a brief has marks that must change
  2    the command line was wrong
  3    a file could not be read or written
  4    a fault of the program's own
  130  stopped from the keyboard, by the interrupt (as a shell reports it): files that are
       finished stand, none is half-written
`
