# Maps that part the plan into classes, and their legends.

maps-density = Homes by land, block by block
maps-phases = Phases
maps-sections = Street sections
maps-owners = Owners
maps-ground = Buildings alone
# A class of the map of homes by land.
maps-up-to = up to { $high } { $unit }
maps-between = over { $low } to { $high } { $unit }
maps-over = over { $low } { $unit }
maps-homes-per-acre = homes/acre
maps-homes-per-hectare = homes/ha
maps-homes = { $count ->
    [one] { $count } home
   *[other] { $count } homes
}
maps-mix = Mix of uses within 5 minutes
# A class of the map of mix, in evenness from 0 to 1.
maps-mix-one = 0, all of one use
maps-mix-up-to = up to { $high }
maps-mix-between = over { $low } to { $high }
maps-mix-over = over { $low } to 1
maps-mix-note = Evenness of the floor area of homes, work, shops, learning and gathering that the homes along each front reach within 5 minutes at { $pace }: 0 is one use alone, 1 is the five alike.
maps-density-note = Homes on the lots of a block by its land, streets left out.
maps-phases-note = By homes; streets have the number of their phase too.
maps-ground-note = Every building as laid on its lot, whatever its use: figure and ground.
maps-one-phase = all at once
maps-nothing = Nothing of this is drawn yet.
