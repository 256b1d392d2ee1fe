# The command line. Names of commands and options, and what is told to give in capitals, are the same in every language.
# Lists of options stand in columns. A line that goes on with a bracket is quoted with the blanks before it, which would be
# lost otherwise.

command-line-usage =
    usage: hobnail measure PLAN.geojson [options]      every figure of a plan
           hobnail measure DIR --table OUT.csv         the first figures of every plan in a folder
           hobnail export PLAN.geojson --to FORMAT     a plan for other programs
           hobnail network STREETS.geojson [options]   measure a bare street network
           hobnail open ADDRESS                        the plan file of an address
           hobnail COMMAND --help                      what a command takes
           hobnail --version

    A file may be - for standard input. With --language es, all is said in Spanish; en is English.
    Exit codes: 0 fine, 1 measured with things to fix, 2 could not run.

command-line-usage-measure =
    usage: hobnail measure PLAN.geojson [--alternative NAME] [--phases ID,ID] [--without OWNERS] [--today]
    { "                       [--json]" } [--basis FIGURE] [--language CODE]
           hobnail measure DIR --table OUT.csv [--units us|metric] [--language CODE]

    Measures one alternative of a plan file, its first where none is named. PLAN may be - for standard
    input. A plan that is unfinished or has faults is measured as it stands, and the faults are told.

      --alternative NAME  which alternative
      --phases ID,ID      these phases alone, by their numbers in the plan; existing things stand in every phase
      --without OWNERS    land of these groups held back and not counted: public, willing, unknown, unwilling
      --today             what stands today: existing streets and places; uses are proposals and none counts
      --json              all figures with their ranges as JSON
      --basis FIGURE      how one figure was worked out, down to its sources
      --table OUT.csv     the figures beside the drawing for every plan file (.geojson, .json) of a folder, one line
                          for each alternative, by name; - for standard output
      --units UNITS       units of that table: us or metric; else those of the first plan
      --language CODE     what language to speak: en (English, the default) or es (Spanish)

    Exit codes: 0 fine, 1 measured with things to fix, 2 could not run.

command-line-usage-export =
    usage: hobnail export PLAN.geojson --to FORMAT [--alternative NAME] [--scale N] [--units us|metric]
    { "                      [--base" } URL] [--language CODE]

    Writes one alternative of a plan file, its first where none is named, for other programs, to standard
    output. PLAN may be - for standard input. Faults of the plan are told.

      --to FORMAT         svg       the drawing at true scale, in layers
                          dxf       the drawing for drafting programs (AC1015), in the same layers, with all that lies
                                    around the site: only svg ends some way beyond it
                          geojson   all that is derived, with its figures: blocks, land, lots, buildings,
                                    streets, intersections, fronts, walk-sheds, places (RFC 7946)
                          csv       every figure with its range, basis and sources
                          address   an address from which the whole plan opens; what it leaves out is told
      --alternative NAME  which alternative
      --scale N           scale of a drawing: 1000 or 1:1000, or 100ft for an inch to a hundred feet
                          (else 1:1000, or 1:1200 in US units); in dxf it sizes the type alone
      --base URL          the page's address, to stand before the plan's; else the plan's part alone
      --units UNITS       units of a table or drawing: us or metric; else the plan's own
      --language CODE     what language to speak: en (English, the default) or es (Spanish)

    Exit codes: 0 fine, 1 exported with things to fix, 2 could not run.

command-line-usage-network =
    usage: hobnail network STREETS.geojson [--points POINTS.geojson] [--meters] [--about LON,LAT]
    { "                       [--tolerance M]" } [--within 200,400,800] [--json] [--language CODE]

    Measures the streets of a GeoJSON file (LineString, MultiLineString): what they enclose, how they
    connect, and, from the points of a second file, who walks how far. Either file may be - for standard
    input. Coordinates are longitude and latitude in degrees (RFC 7946) unless --meters is given.

      --points FILE     points with a role: origin (as when none is given), sample, dwelling (with a
                        number dwellings), place (with use and area_m2)
      --meters          coordinates are meters east and north
      --about LON,LAT   measure degrees about this place instead of the middle of the streets
      --tolerance M     join ends of streets to a street this near, in meters (0 to 10; default 0)
      --within LIST     distances of walk-sheds in meters (default 200,400,800)
      --json            all numbers as JSON
      --language CODE   what language to speak: en (English, the default) or es (Spanish)

    Exit codes: 0 fine, 1 measured with things to fix, 2 could not run.

command-line-usage-open =
    usage: hobnail open ADDRESS [--language CODE]

    Prints the plan file of an address, or of its part behind the # alone. ADDRESS may be - for standard
    input.

      --language CODE  what language to speak: en (English, the default) or es (Spanish)

    Exit codes: 0 fine, 2 could not run.

## What is wrong with the words given; stands behind "hobnail: ", or the name of the command and a colon.

command-line-no-command = no command { $name }
command-line-no-option = no option { $option }
command-line-needs-value = { $option } needs a value
command-line-no-language = --language: there is no { $code }; there are: { $codes }
command-line-no-plan = which plan? name one file, or - for standard input
command-line-one-plan = one plan at a time, not { $count }: { $names }
command-line-no-address = which address? give one, or - for standard input
command-line-one-address = one address at a time, not { $count }
command-line-today-phases = --today goes without --phases: nothing proposed stands today
command-line-to-what = to what? --to and one of: { $formats }
command-line-no-format = --to: there is no { $word }; there are: { $formats }
command-line-no-scale = --scale: { $word } is not a scale such as 1000, 1:1000 or 100ft, from 1:50 to 1:100000
command-line-no-units = --units: { $word } is not us or metric
command-line-not-with-table = { $option } does not go with --table
command-line-one-folder = --table takes one folder of plan files, not { $count }
command-line-no-plan-files = { $folder }: there is no file that ends in .geojson or .json
command-line-table-faults = { $count ->
    [one] 1 line of the table tells of faults
   *[other] { $count } lines of the table tell of faults
}
# These stand behind the name of an option and a colon; word is what was given.
command-line-not-a-phase = { $word } is not the number of a phase
command-line-no-owners = { $word } is no group of owners; there are: { $words }
command-line-number-count = { $count } numbers instead of { $wanted }
command-line-not-numbers = { $word } is not a number or numbers set apart by commas
command-line-no-streets = no file of streets
command-line-one-file = one file of streets, not also { $names }
command-line-one-input = streets and points can not both come from standard input
command-line-about-meters = --about goes with degrees, not with --meters

## Files. error is English of the operating system.

command-line-standard-input = standard input
command-line-standard-output = standard output
command-line-can-not-read = { $file }: can not be read: { $error }
command-line-can-not-write = { $file }: can not be written: { $error }
