# Alturas del terreno: tomadas de archivos, dibujadas como curvas de nivel, y qué significan las pendientes.

heights-title = Alturas del terreno
heights-read = Se leyó { $file }. Contiene alturas del terreno.
heights-in-file = Alturas
# In the file's own unit, which is chosen beside it.
heights-from-to = de { $lowest } a { $highest }
heights-cell = Celdas
heights-cells = { $cells } de { $wide } por { $high }; { $empty } de ellas sin altura
heights-unit = Las alturas están en
heights-unit-about = Pocos archivos lo dicen. Si este no lo dice, se toman pies cuando sus coordenadas están en pies, y si no, metros; compruebe que estas alturas son las del lugar.
heights-place = La cuadrícula no dice en qué lugar de la Tierra está. Su cero es su esquina suroeste; su centro se pone en el origen del plan, a menos que usted escriba otra cosa.
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

## Curvas de nivel y el mapa de pendientes.

heights-contours = curvas cada { $interval }
heights-map = Pendiente del terreno
heights-none = El plan no tiene alturas del terreno. Tómelas de un archivo de datos de base en el menú del plan.
# A class of slope; a slope on a border is in the steeper class.
heights-class-under = menos de { $high } %
heights-class-between = de { $low } a menos de { $high } %
heights-class-over = { $low } % o más
heights-steep-walk = Calles de más de 5 % (aceras)
heights-steep-fire = Calles de más de { $limit } % (acceso de bomberos)
heights-percent = { $grade } %
heights-map-note = Suelo dentro del terreno según las clases de los ajustes; salvo que se fijen otras, son las zonas de pendiente de un código municipal (cap. 17.52, Ord. 1000, 2022; ecode360 43293071). Calles por tramos de 20 m: aceras según ICC A117.1, acceso de bomberos según el International Fire Code, ap. D, salvo que se fije otro límite. Una cuadrícula no es un levantamiento: la norma local y profesionales autorizados deciden sobre suelo empinado o inestable, drenaje y nivelación.
# Where classes of slope end, in the settings.
heights-border = límite de una clase de pendiente
heights-border-of = La clase { $number } termina antes de
heights-border-about = Dónde terminan las clases del mapa de pendientes. Tome los límites de la norma local: ella y los profesionales autorizados deciden qué puede construirse en suelo empinado.
heights-border-source = zonas de pendiente de un código municipal, cap. 17.52, Ord. 1000, 2022
heights-border-refused = cada clase debe terminar en una pendiente mayor que la anterior

## Una calle a lo largo del terreno.

heights-along = Pendiente a lo largo de la calle
heights-steepest = Tramo de 20 m más empinado
heights-grade-up = { $grade } % de subida a lo largo de la calle
heights-grade-down = { $grade } % de bajada a lo largo de la calle
heights-limit-field = Lo más empinado para bomberos
heights-limit-step = fijar la mayor pendiente de acceso de bomberos
heights-limit-fire = Más de { $limit } %, acceso de bomberos
heights-limit-fire-source = International Fire Code, apéndice D, donde esté adoptado, salvo que el jefe de bomberos apruebe más
heights-limit-ramp = Más de 8,33 %, rampas
heights-limit-ramp-source = Normas ADA 2010, 405.2: 1 en 12
heights-limit-walk = Más de 5 %, aceras
heights-limit-walk-source = ICC A117.1, 403.3: 1 en 20; junto a una calle la acera puede seguir la pendiente de la calle
heights-steeper = { $length } más empinados
heights-no-steeper = nada más empinado
heights-decides = Según el terreno como está, sin cortes ni rellenos. Nivel de planificación: deciden la norma local y un ingeniero autorizado.
heights-low = punto bajo
heights-true = a escala real
heights-exaggerated = alturas dibujadas { $times } veces
# along is the length and the scale of heights.
heights-profile = El terreno a lo largo de la calle, { $along }. De { $from } de altura al comienzo a { $to } al final. { $low ->
    [0] Ningún punto bajo en medio.
    [one] Un punto bajo en medio.
   *[other] { $low } puntos bajos en medio.
}
