# Maps that part the plan into classes, and their legends.

maps-density = Viviendas por suelo, manzana por manzana
maps-phases = Etapas
maps-sections = Secciones de calle
maps-owners = Propietarios
maps-ground = Solo los edificios
# A class of the map of homes by land.
maps-up-to = hasta { $high } { $unit }
maps-between = de { $low } a { $high } { $unit }
maps-over = más de { $low } { $unit }
maps-homes-per-acre = viviendas/acre
maps-homes-per-hectare = viviendas/ha
maps-homes = { $count ->
    [one] { $count } vivienda
   *[other] { $count } viviendas
}
maps-density-note = Viviendas en los lotes de una manzana por su suelo, sin las calles.
maps-phases-note = Según las viviendas; las calles también llevan el número de su etapa.
maps-ground-note = Cada edificio como queda en su lote, sea cual sea su uso: figura y fondo.
maps-one-phase = todo a la vez
maps-nothing = Todavía no hay nada de esto dibujado.
