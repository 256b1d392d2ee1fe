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
maps-mix = Mezcla de usos a 5 minutos
# A class of the map of mix, in evenness from 0 to 1.
maps-mix-one = 0, un solo uso
maps-mix-up-to = hasta { $high }
maps-mix-between = de { $low } a { $high }
maps-mix-over = de { $low } a 1
maps-mix-note = Equilibrio de la superficie construida de viviendas, trabajo, comercios, enseñanza y reunión que alcanzan en 5 minutos, a { $pace }, las viviendas de cada frente: 0 es un solo uso, 1 los cinco por igual.
maps-density-note = Viviendas en los lotes de una manzana por su suelo, sin las calles.
maps-phases-note = Según las viviendas; las calles también llevan el número de su etapa.
maps-ground-note = Cada edificio como queda en su lote, sea cual sea su uso: figura y fondo.
maps-one-phase = todo a la vez
maps-nothing = Todavía no hay nada de esto dibujado.
