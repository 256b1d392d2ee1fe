# Figures: units, how a number is written, and how it was worked out.

## Words of units; they stand behind a number and in units made of them, such as homes/acre. A unit of one, then of
## many.

figures-unit-home = home
figures-unit-homes = homes
figures-unit-person = person
figures-unit-people = people
figures-unit-job = job
figures-unit-jobs = jobs
figures-unit-lot = lot
figures-unit-lots = lots
figures-unit-acre = acre
figures-unit-acres = acres
figures-unit-seat = seat
figures-unit-seats = seats
figures-unit-space = space
figures-unit-spaces = spaces
figures-unit-intersection = intersection
figures-unit-intersections = intersections
# A unit that is none.
figures-plain-number = a plain number

## How a number was worked out, in words; names of figures stand in them.

figures-sum-of-list = the sum of the numbers listed
figures-mean-of-list = the mean of the numbers listed, each by its weight
figures-and = { $first } and { $second }
figures-sum = the sum of { $of } over { $over }
figures-mean = the mean of { $of } over { $over }, weighted by { $weight }
figures-curve = the curve of { $of } by { $by }, read at { $at }
figures-balance = from { $start }, along { $along }: the balance before + { $change }
figures-balance-least = { $words }, never below { $least }
figures-balance-most = { $words }, never above { $most }
figures-bounds = least and most
figures-percentiles = 10th and 90th percentiles
figures-factor-values = { $id }: { $typical }; low { $low }, high { $high } ({ $meaning })
figures-factor-as-written = as written: { $typical }; low { $low }, high { $high }
figures-factor-changed = changed by the user; shipped as { $typical }, low { $low }, high { $high }
figures-factor-shipped = shipped { $source }
figures-factor-group = moves together with the other factors of the group { $group }

## Lines of a basis as plain text.

figures-by-method = by { $name }: { $words }
figures-counted-what = counted on the drawing: { $what }
figures-counted = counted on the drawing
figures-chosen = a chosen setting
figures-from-factors = from the factor tables
figures-no-entries = has no entries
figures-for = for { $place }:
figures-for-value = for { $place }: { $value }
figures-zeros-left-out = zero in { $zeros } other places
figures-not-listed = and { $rows } other places, not used here
figures-changed-factors = rests on factors changed by the user: { $factors }
figures-terms-zero = and { $terms } × { $zero }

## Why a number cannot be worked out; a reason stands behind a colon.

figures-curve-no-knots = the curve has no knots
figures-curve-knot-unknown = a knot of the curve cannot be worked out
figures-curve-out-of-order = the curve's knots are out of order
figures-no-power = a power of these numbers does not exist
figures-too-large-result = the result is too large to hold
figures-divides-by-zero = no { $what } yet
figures-no-logarithm = { $what } is not above zero, and has no logarithm
figures-nothing-to-average = there is nothing to average: { $weight } sums to zero

## Parts of formulas, followed by values in parentheses: "smaller of (3; 4)".

figures-smaller-of = smaller of
figures-larger-of = larger of
figures-power-of = power of
figures-choice = if { $left } { $sign } { $right } then { $then } else { $otherwise }

## Differences between two alternatives.

figures-other-graph = the two are worked with different figures
figures-other-seed = the two are drawn with different seeds
figures-other-entries = the two tables do not have the same entries
figures-no-difference = no clear difference
# Between two shares, in place of the percent sign.
figures-one-point = 1 point
figures-points = { $number } points
figures-more = { $amount } more
figures-less = { $amount } less

## A number as the page shows it. In its place stands the reason, behind the colon, when there is none. The page
## writes what stands before the first comma and what stands behind it apart from one another.

figures-unknown = cannot be worked out:
figures-about-range = about { $amount }, likely { $low } to { $high }
figures-about = about { $amount }; no range
figures-draws-missing = { $shown } (no result in { $failed } of { $draws } draws)

## Stands right behind a number or a text.

figures-mark-changed = {" "}(with changed factors)
figures-mark-memory = {" "}(from memory)
figures-mark-common = {" "}(common practice, no source)

## Low, typical and high of a factor.

figures-low = low
figures-typical = typical
figures-high = high
figures-common-practice = common practice, no source
figures-no-year = year not recorded
figures-spread-finite = low, typical and high must be finite numbers
figures-spread-falls = low, typical and high must not fall
figures-spread-positive = a positive factor's low must be above zero
figures-spread-share = a share's low must be above 0 and its high below 1; `bounds` may reach them
figures-source-via = { $source } (read in { $via })

## Why it cannot be told which factors the doubt in a number comes from.

figures-certain = nothing uncertain goes into it
figures-unmoved = no uncertain factor moves it
figures-few-draws = too many draws cannot be worked out
figures-inseparable = the draws of its factors cannot be told apart

## What is wrong with values given to the figures.

figures-input-no-axis = there is no axis `{ $id }`
figures-input-fixed-axis = the entries of the axis `{ $id }` never change
figures-input-entry-twice = the axis `{ $id }` was given the entry `{ $entry }` twice
figures-input-no-leaf = there is no leaf `{ $id }`
figures-input-other-kind = `{ $id }` is { $declared } but was given a { $given } value
figures-input-cells = `{ $id }` needs { $expected } cells but was given { $given }
figures-input-not-finite = cell { $cell } of `{ $id }` is not a finite number
figures-input-dimension = `{ $id }` is in { $declared }, but the factor `{ $factor }` is in { $given }
figures-input-spread = the factor `{ $factor }` for `{ $id }`: { $fault }
figures-input-missing = `{ $id }` has no value yet

## Of a value: counted on the drawing, chosen by somebody, from the tables of factors.

figures-kind-counted = counted
figures-kind-chosen = chosen
figures-kind-factor = factor

## What is wrong with the declarations of figures.

figures-graph-bad-id = `{ $id }` is not lower-case words joined by dots and underscores
figures-graph-repeated = `{ $id }` is declared more than once
figures-graph-not-worked-out = `{ $id }` does not say how it is worked out
figures-graph-no-node = `{ $id }` refers to `{ $node }`, which is not declared
figures-graph-no-axis = `{ $id }` names the axis `{ $axis }`, which is not declared
figures-graph-axis-twice = `{ $id }` names the axis `{ $axis }` twice
figures-graph-entry-twice = the axis `{ $id }` has the entry `{ $entry }` twice
figures-graph-no-entry = `{ $id }` names the entry `{ $entry }`, which the axis `{ $axis }` does not have for good
figures-graph-axis-not-there = `{ $id }` works along the axis `{ $axis }`, which `{ $of }` does not have
figures-graph-axis-in-the-way = `{ $id }` works along the axis `{ $axis }`, which `{ $of }` must not have
figures-graph-axes-differ = `{ $id }` is declared over [{ $declared }] but worked out over [{ $worked }]
figures-graph-unit-differs = `{ $id }` is declared in { $declared } but worked out in { $worked }
figures-graph-unlike-units = `{ $id }` brings { $left } and { $right } together in { $by }
figures-graph-not-plain = `{ $id }` needs a plain number for { $by }, not { $given }
figures-graph-no-power = `{ $id }` raises { $base } to a power that is not constant or leaves no whole power
figures-graph-method-inputs = `{ $id }` gives its method { $given } inputs instead of { $expected }
figures-graph-cycle = `{ $id }` needs itself through { $through }

## Where units come together, in the faults above.

figures-in-curve = a curve lookup
figures-in-balance = a running balance
figures-in-method = a method's input
figures-in-exponent = an exponent
figures-in-sum = a sum
figures-in-difference = a difference
figures-in-smaller = the smaller of two
figures-in-larger = the larger of two
figures-in-exponential = an exponential or logarithm
figures-in-comparison = a comparison
figures-in-choice = a choice
