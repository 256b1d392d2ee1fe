# Figures: units, how a number is written, and how it was worked out.

## Words of units; they stand behind a number and in units made of them, such as homes/acre. A unit of one, then of
## many.

figures-unit-home = vivienda
figures-unit-homes = viviendas
figures-unit-person = persona
figures-unit-people = personas
figures-unit-job = empleo
figures-unit-jobs = empleos
figures-unit-lot = lote
figures-unit-lots = lotes
figures-unit-acre = acre
figures-unit-acres = acres
figures-unit-seat = plaza
figures-unit-seats = plazas
figures-unit-space = espacio
figures-unit-spaces = espacios
figures-unit-intersection = intersección
figures-unit-intersections = intersecciones
# A unit that is none.
figures-plain-number = un número sin unidad

## How a number was worked out, in words; names of figures stand in them.

figures-sum-of-list = la suma de los números de la lista
figures-mean-of-list = la media de los números de la lista, cada uno por su peso
figures-and = { $first } y { $second }
figures-sum = la suma de { $of } por { $over }
figures-mean = la media de { $of } por { $over }, ponderada por { $weight }
figures-curve = la curva de { $of } según { $by }, leída en { $at }
figures-balance = desde { $start }, a lo largo de { $along }: el saldo anterior + { $change }
figures-balance-least = { $words }, nunca por debajo de { $least }
figures-balance-most = { $words }, nunca por encima de { $most }
figures-bounds = mínimo y máximo
figures-percentiles = percentiles 10 y 90
figures-factor-values = { $id }: { $typical }; bajo { $low }, alto { $high } ({ $meaning })
figures-factor-as-written = como está escrito: { $typical }; bajo { $low }, alto { $high }
figures-factor-changed = cambiado por el usuario; originalmente { $typical }, bajo { $low }, alto { $high }
figures-factor-shipped = valor original, { $source }
figures-factor-group = se mueve junto con los otros factores del grupo { $group }

## Lines of a basis as plain text.

figures-by-method = por { $name }: { $words }
figures-counted-what = contado en el dibujo: { $what }
figures-counted = contado en el dibujo
figures-chosen = un ajuste elegido
figures-from-factors = de las tablas de factores
figures-no-entries = no tiene entradas
figures-for = para { $place }:
figures-for-value = para { $place }: { $value }
figures-zeros-left-out = cero en otros { $zeros } lugares
figures-not-listed = y otros { $rows } lugares, que no se usan aquí
figures-changed-factors = se basa en factores cambiados por el usuario: { $factors }
figures-terms-zero = y { $terms } × { $zero }

## Why a number cannot be worked out; a reason stands behind a colon.

figures-curve-no-knots = la curva no tiene nudos
figures-curve-knot-unknown = no se puede calcular un nudo de la curva
figures-curve-out-of-order = los nudos de la curva están desordenados
figures-no-power = no existe una potencia de estos números
figures-too-large-result = el resultado es demasiado grande
figures-divides-by-zero = todavía no hay { $what }
figures-no-logarithm = { $what } no es mayor que cero y no tiene logaritmo
figures-nothing-to-average = no hay nada que promediar: { $weight } suma cero

## Parts of formulas, followed by values in parentheses: "smaller of (3; 4)".

figures-smaller-of = menor de
figures-larger-of = mayor de
figures-power-of = potencia de
figures-choice = si { $left } { $sign } { $right } entonces { $then }, si no { $otherwise }

## Differences between two alternatives.

figures-other-graph = los dos se calculan con cifras distintas
figures-other-seed = los dos se sortean con semillas distintas
figures-other-entries = las dos tablas no tienen las mismas entradas
figures-no-difference = sin diferencia clara
# Between two shares, in place of the percent sign.
figures-one-point = 1 punto
figures-points = { $number } puntos
figures-more = { $amount } más
figures-less = { $amount } menos

## A number as the page shows it. In its place stands the reason, behind the colon, when there is none. The page
## writes what stands before the first comma and what stands behind it apart from one another.

figures-unknown = no se puede calcular:
figures-about-range = aprox. { $amount }, probable: { $low } a { $high }
figures-about = aprox. { $amount }; sin rango
figures-draws-missing = { $shown } (sin resultado en { $failed } de { $draws } sorteos)

## Stands right behind a number or a text.

figures-mark-changed = {" "}(con factores cambiados)
figures-mark-memory = {" "}(de memoria)
figures-mark-common = {" "}(práctica común, sin fuente)

## Low, typical and high of a factor.

figures-low = bajo
figures-typical = típico
figures-high = alto
figures-common-practice = práctica común, sin fuente
figures-no-year = año no registrado
figures-spread-finite = bajo, típico y alto deben ser números finitos
figures-spread-falls = bajo, típico y alto no deben decrecer
figures-spread-positive = el valor bajo de un factor positivo debe ser mayor que cero
figures-spread-share = el valor bajo de una proporción debe ser mayor que 0 y el alto menor que 1; `bounds` puede alcanzarlos
figures-source-via = { $source } (leído en { $via })

## Why it cannot be told which factors the doubt in a number comes from.

figures-certain = no entra en ella nada incierto
figures-unmoved = ningún factor incierto la mueve
figures-few-draws = demasiados sorteos no se pueden calcular
figures-inseparable = los sorteos de sus factores no se pueden distinguir

## What is wrong with values given to the figures.

figures-input-no-axis = no hay un eje `{ $id }`
figures-input-fixed-axis = las entradas del eje `{ $id }` nunca cambian
figures-input-entry-twice = el eje `{ $id }` recibió la entrada `{ $entry }` dos veces
figures-input-no-leaf = no hay un dato `{ $id }`
figures-input-other-kind = `{ $id }` es { $declared } pero recibió un valor { $given }
figures-input-cells = `{ $id }` necesita { $expected } celdas pero recibió { $given }
figures-input-not-finite = la celda { $cell } de `{ $id }` no es un número finito
figures-input-dimension = `{ $id }` está en { $declared }, pero el factor `{ $factor }` está en { $given }
figures-input-spread = el factor `{ $factor }` para `{ $id }`: { $fault }
figures-input-missing = `{ $id }` aún no tiene valor

## Of a value: counted on the drawing, chosen by somebody, from the tables of factors.

figures-kind-counted = contado
figures-kind-chosen = elegido
figures-kind-factor = de factor

## What is wrong with the declarations of figures.

figures-graph-bad-id = `{ $id }` no son palabras en minúsculas unidas por puntos y guiones bajos
figures-graph-repeated = `{ $id }` se declara más de una vez
figures-graph-not-worked-out = `{ $id }` no dice cómo se calcula
figures-graph-no-node = `{ $id }` se refiere a `{ $node }`, que no está declarado
figures-graph-no-axis = `{ $id }` nombra el eje `{ $axis }`, que no está declarado
figures-graph-axis-twice = `{ $id }` nombra el eje `{ $axis }` dos veces
figures-graph-entry-twice = el eje `{ $id }` tiene la entrada `{ $entry }` dos veces
figures-graph-no-entry = `{ $id }` nombra la entrada `{ $entry }`, que el eje `{ $axis }` no tiene de forma fija
figures-graph-axis-not-there = `{ $id }` se calcula a lo largo del eje `{ $axis }`, que `{ $of }` no tiene
figures-graph-axis-in-the-way = `{ $id }` se calcula a lo largo del eje `{ $axis }`, que `{ $of }` no debe tener
figures-graph-axes-differ = `{ $id }` se declara sobre [{ $declared }] pero se calcula sobre [{ $worked }]
figures-graph-unit-differs = `{ $id }` se declara en { $declared } pero se calcula en { $worked }
figures-graph-unlike-units = `{ $id }` junta { $left } y { $right } en { $by }
figures-graph-not-plain = `{ $id }` necesita un número sin unidad para { $by }, no { $given }
figures-graph-no-power = `{ $id }` eleva { $base } a una potencia que no es constante o que no deja una potencia entera
figures-graph-method-inputs = `{ $id }` da a su método { $given } entradas en vez de { $expected }
figures-graph-cycle = `{ $id }` se necesita a sí mismo a través de { $through }

## Where units come together, in the faults above.

figures-in-curve = la lectura de una curva
figures-in-balance = un saldo
figures-in-method = una entrada de un método
figures-in-exponent = un exponente
figures-in-sum = una suma
figures-in-difference = una diferencia
figures-in-smaller = el menor de dos
figures-in-larger = el mayor de dos
figures-in-exponential = una exponencial o un logaritmo
figures-in-comparison = una comparación
figures-in-choice = una elección
