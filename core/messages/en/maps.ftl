# Maps that part the plan into classes, and their legends.

maps-density = Homes by land, block by block
maps-phases = Phases
maps-sections = Street sections
maps-owners = Owners
maps-ground = Buildings alone
# A class of the map of homes by land.
maps-up-to-acre = up to { $high } homes/acre
maps-between-acre = over { $low } to { $high } homes/acre
maps-over-acre = over { $low } homes/acre
maps-up-to-hectare = up to { $high } homes/ha
maps-between-hectare = over { $low } to { $high } homes/ha
maps-over-hectare = over { $low } homes/ha
maps-homes = { $count ->
    [one] { $count } home
   *[other] { $count } homes
}
maps-density-note = Homes on the lots of a block by its land, streets left out.
maps-phases-note = By homes; streets have the number of their phase too.
maps-ground-note = Every building as laid on its lot, whatever its use: figure and ground.
maps-one-phase = all at once
maps-nothing = Nothing of this is drawn yet.
