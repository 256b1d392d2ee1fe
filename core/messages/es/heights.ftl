# Alturas del terreno: tomadas de archivos, dibujadas como curvas de nivel, y qué significan las pendientes.

heights-title = Alturas del terreno
heights-read = Se leyó { $file }. Contiene alturas del terreno.
heights-in-file = Alturas
# In the file's own unit, which is chosen beside it.
heights-from-to = de { $lowest } a { $highest }
heights-cell = Celdas
heights-cells = { $cells } de { $wide } por { $high }; { $empty } de ellas sin altura
heights-unit = Las alturas están en
heights-unit-about = Pocos archivos lo dicen; compruebe que estas alturas son las del lugar.
heights-caution = Una cuadrícula de alturas no es un levantamiento topográfico. El suelo empinado o inestable, el drenaje y la nivelación corresponden a profesionales autorizados.
heights-asked = Se están leyendo las alturas de esta zona.
heights-elsewhere = Ninguna altura del archivo está en esta zona.
heights-too-few = { $filled } de { $count } puntos de la zona están donde el archivo no tiene altura. Elija una zona que el archivo cubra.
heights-known = El plan ya tiene estas alturas.
heights-instead = Sustituyen a las alturas que tiene el plan.
heights-range = Un punto cada { $spacing }, con alturas de { $lowest } a { $highest }.
heights-filled = { $count ->
    [one] Un punto está donde el archivo no tiene altura; toma la del punto más cercano.
   *[other] { $count } puntos están donde el archivo no tiene altura; cada uno toma la del punto más cercano.
}
heights-beyond = El { $percent } % de la zona queda fuera del archivo y sin alturas; allí el terreno cuenta como llano a partir del borde.
# credit is who is to be named, and may be empty.
heights-source = { $filled ->
    [0] De { $file }. { $credit }
    [one] De { $file }; una altura es la del punto más cercano. { $credit }
   *[other] De { $file }; { $filled } alturas son las del punto más cercano. { $credit }
}
heights-step = alturas del terreno
heights-remove = Quitar las alturas
heights-remove-step = quitar las alturas
