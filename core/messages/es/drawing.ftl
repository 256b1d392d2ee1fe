## Words painted on the drawing: keep them short.

drawing-quarter-mile = un cuarto de milla, 1,320 pies
drawing-outside = Exterior
drawing-note = Nota
drawing-outside-homes = { $count ->
    [one] { $count } vivienda
   *[other] { $count } viviendas
}
drawing-outside-jobs = { $count ->
    [one] { $count } empleo
   *[other] { $count } empleos
}
# Units beside the scale bar.
drawing-miles = mi
drawing-feet = ft

## Kinds of places, where they have no name of their own.

drawing-center = Centro
drawing-transit-stop = Parada de transporte
drawing-school = Escuela
drawing-community-hall = Salón comunitario
drawing-park = Parque
drawing-shop = Comercio
drawing-clinic = Clínica

## The best point for a center, and minutes of walking.

drawing-best-point = mejor punto
drawing-minutes = { $count } min

## Uses of land, on the drawing and in the legend.

drawing-use-homes = viviendas
drawing-use-business = negocios
drawing-use-making = industria
drawing-use-civic = uso cívico
drawing-use-park = parque
drawing-use-natural = suelo natural

## What holds land back.

drawing-water = Agua
drawing-floodplain = Zona inundable
drawing-wetland = Humedal
drawing-steep = Terreno empinado
drawing-easement = Servidumbre
drawing-conservation = Conservación
drawing-contaminated = Suelo contaminado
drawing-keep = Se deja como está

## Groups of owners of a parcel.

drawing-owner-public = Propietario público
drawing-owner-willing = Dispuesto
drawing-owner-unknown = Sin consultar
drawing-owner-unwilling = No dispuesto
# The main building type of a block, and how many others are mixed in.
drawing-land-more = { $name } y { $count } más
drawing-stories-beside = { $count ->
    [one] { $count } piso como máximo junto a ella
   *[other] { $count } pisos como máximo junto a ella
}
