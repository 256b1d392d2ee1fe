# Answers of the command line: the figures of a plan, and a bare street network.

## What can not be measured.

report-no-alternative = no hay ninguna alternativa llamada `{ $name }`; hay: { $names }
report-no-phases = no hay etapa { $id }; el plan no tiene etapas
report-no-phase = no hay etapa { $id }; hay: { $names }
report-no-figure = no hay ninguna cifra `{ $id }`; hay: { $ids }
report-no-streets = no hay ninguna calle que medir
report-bad-center = { $longitude }, { $latitude } no es una longitud y latitud en torno a la cual medir (±180, ±89)
report-bad-tolerance = una tolerancia de { $tolerance } m no está entre 0 y { $most } m
report-bad-within = un recorrido a pie de { $within } m no es mayor que 0 y de { $most } m como máximo

## Behind the figures of a plan.

report-note = nota: { $note }

## Columns of the table of a folder's plans; the figures stand between the alternative's table and the last three.

report-table-file = archivo
report-table-plan = plan
report-table-alternative = alternativa
# The table of people at which the alternative was drawn.
report-table-people = mesa
report-table-unknown = no se puede calcular
report-table-notes = notas
report-table-faults = errores

## A street network in words: a word of its own width first, then a sentence. Lengths come with their unit.

report-streets = { $dead_ends ->
    [one] Calles      { $length } de calle en { $parts }: { $links } entre { $nodes }, { $dead_ends } de ellos sin salida.
   *[other] Calles      { $length } de calle en { $parts }: { $links } entre { $nodes }, de los cuales { $dead_ends } sin salida.
}
report-parts = { $count ->
    [one] { $number } parte conexa
   *[other] { $number } partes conexas
}
report-links = { $count ->
    [one] { $number } enlace
   *[other] { $number } enlaces
}
report-nodes = { $count ->
    [one] { $number } nodo
   *[other] { $number } nodos
}
report-connection = Conexión    { $ratio } enlaces por nodo, contando todos los nodos; cruces de tres o más enlaces: { $junctions }.
report-connection-none = Conexión    ningún enlace por nodo, contando todos los nodos; cruces de tres o más enlaces: { $junctions }.
# Faces are the areas that streets enclose.
report-faces = Caras       encerradas: { $count }; la mitad miden más de { $area_ha } ha, la mitad tienen más de { $perimeter } de contorno, la mayor { $longest }.
report-density = Densidad    { $density } intersecciones por km² de la envolvente convexa de las calles ({ $area_ha } ha).
report-busiest = Más usado   { $walks } de todos los recorridos a pie más cortos entre nodos usan el enlace de { $length } en torno a { $east }, { $north }.
report-positions = Posiciones  en metros al este y al norte de la longitud { $longitude }, latitud { $latitude }.

# id is the name of a point walks start from. Samples are points walked to.
report-origin = Desde { $id } (a { $offset } m de la calle): { $nodes } al alcance.
report-origin-far = Desde { $id } (a { $offset } m de la calle): { $nodes } al alcance, el más lejano a { $farthest }.
report-origin-direct = Desde { $id } (a { $offset } m de la calle): { $nodes } al alcance; los recorridos a pie hasta las muestras son { $mean } veces tan largos como la línea recta.
report-origin-far-direct = Desde { $id } (a { $offset } m de la calle): { $nodes } al alcance, el más lejano a { $farthest }; los recorridos a pie hasta las muestras son { $mean } veces tan largos como la línea recta.
report-nearest-origin = Desde el más cercano de estos orígenes
# Areas in hectares of one walk-shed, measured three ways. radius stands right-aligned.
report-shed = hasta { $radius } m  { $length } de calle; superficie por envolvente { $hull } ha, por franja de 25 m { $buffer } ha, por caras encerradas { $enclosed } ha.
report-shed-dwellings = hasta { $radius } m  { $length } de calle, { $dwellings }; superficie por envolvente { $hull } ha, por franja de 25 m { $buffer } ha, por caras encerradas { $enclosed } ha.
report-shed-dwellings-share = hasta { $radius } m  { $length } de calle, { $dwellings } ({ $share } %); superficie por envolvente { $hull } ha, por franja de 25 m { $buffer } ha, por caras encerradas { $enclosed } ha.
report-dwellings = { $count ->
    [one] { $number } vivienda
   *[other] { $number } viviendas
}

## Notes on what was drawn; most stand behind a feature of the file and a colon. x and y are as in the file.

report-too-many-nodes = más de { $most } nodos: se deja fuera la intermediación
report-line-too-short = mide menos de un milímetro, se dejó fuera
report-line-too-far = { $x }, { $y } está a más de 100 km de las demás posiciones; su línea se dejó fuera
report-line-no-degrees = { $x }, { $y } no es una longitud y latitud a menos de 100 km de las demás; su línea se dejó fuera
report-point-too-far = { $x }, { $y } está a más de 100 km de las demás posiciones; se dejó fuera
report-point-no-degrees = { $x }, { $y } no es una longitud y latitud a menos de 100 km de las demás; se dejó fuera
# role, origin, sample, dwelling, dwellings, place, use and area_m2 are names in the file.
report-role-no-word = su role no es una palabra, se dejó fuera
report-role-unknown = su role { $role } no es origin, sample, dwelling ni place, se dejó fuera
report-dwelling-uncounted = un dwelling sin un número entero en dwellings, se dejó fuera
report-place-without-use = un place sin use, se dejó fuera
report-place-without-area = un place sin un area_m2 de cero o más, se dejó fuera
# from and to are positions as in the file; other is a feature of the file.
report-join-extended = el extremo en { $from } se une a { $other }, prolongado hasta { $to }
report-join-trimmed = el extremo en { $from } se une a { $other }, recortado hasta { $to }
report-join-moved = el extremo en { $from } se une a { $other }, movido hasta { $to }
