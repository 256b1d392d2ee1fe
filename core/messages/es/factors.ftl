# Factors: the tables of values that figures rest on.

## What is wrong with a table of factors that somebody wrote. Words in backquotes stand in the file as they are.

factors-fault-in-row = { $table }, factor `{ $factor }`: { $fault }
factors-alias-twice = el alias `{ $alias }` aparece dos veces
factors-id-twice = el id aparece dos veces
factors-all-tables = todas las tablas
factors-alias-is-id = el alias `{ $alias }` es el id de un factor
factors-no-title = no tiene título
factors-unknown-unit = la unidad `{ $unit }` no se conoce
factors-practice-with-title = la práctica común no tiene fuente, así que no tiene título
factors-source-no-title = una fuente necesita un título
factors-source-year = el año de una fuente queda fuera de 1500 a 2200
factors-no-source = ninguna fuente dice de dónde viene `{ $value }`
factors-two-sources = más de una fuente da `{ $value }`

## What is wrong with a value somebody typed for a factor.

factors-own-fault = factor `{ $factor }`: { $fault }
factors-no-such = no existe ese factor
factors-given-twice = se da dos veces

## The factors shipped with the program, by id, and notes on them. Their English is that of the tables in
## core/src/factors.

factor-land-lot-yield-share = proporción de suelo que se convierte en lotes
factor-land-lot-yield-share-note = De suelo que aún no tiene calles: se descuentan calles, rincones sobrantes y franjas de servicios. Sustituye a los lotes hasta que se dibujan las manzanas. Las tramas de calles por sí solas ocupan del 14 al 29 por ciento: dos filas de lotes de 150 por 290 pies en manzanas de 1,200 pies, o de 40 por 100 pies en manzanas de 400.
factor-program-floor-per-seat = superficie construida por plaza escolar
factor-program-floor-per-seat-note = Superficie construida bruta de una escuela entre los alumnos para los que se construye; una escuela rural pequeña y un gimnasio ocupan más.
factor-people-per-home = personas por vivienda
factor-people-per-home-note = Hogar medio de todo el país sobre todos los tipos de vivienda; toda vivienda se toma como habitada.
factor-people-household-scale = hogares locales frente a los de los tipos de edificio
factor-people-household-scale-note = Cuántas personas viven aquí en una vivienda, entre las que dicen los tipos de edificio. Los códigos locales escriben de 2.1 a 3.1 personas para apartamentos y de 2.7 a 3.6 para casas, así que una décima parte más o menos es poco.
factor-people-workers-per-home = residentes con empleo por vivienda
factor-people-workers-per-home-note = Residentes con empleo de todo el país entre sus hogares, de memoria y por comprobar antes de usarse; toda vivienda se toma como habitada. Donde hay muchos jubilados es menor que uno.
factor-jobs-floor-per-job-scale-work = superficie construida local por empleo, trabajo
factor-jobs-floor-per-job-scale-work-note = Cuánta superficie ocupa aquí un empleo de oficina, respecto de la que dicen los tipos de edificio. Las cifras publicadas van de 176 a 300 pies cuadrados, donde lo usual son 250.
factor-jobs-floor-per-job-scale-shops = superficie construida local por empleo, comercios
factor-jobs-floor-per-job-scale-shops-note = Cuánta superficie ocupa aquí un empleo de comercio, respecto de la que dicen los tipos de edificio: de 400 a 900 pies cuadrados, donde lo usual son 550.
factor-jobs-floor-per-job-scale-learning = superficie construida local por empleo, escuelas
factor-jobs-floor-per-job-scale-learning-note = Cuánta superficie ocupa aquí un empleo escolar, respecto de la que dicen los tipos de edificio: de 900 a 1,700 pies cuadrados, donde lo usual son 1,300.
factor-jobs-floor-per-job-scale-gathering = superficie construida local por empleo, salones y otros lugares de reunión
factor-jobs-floor-per-job-scale-gathering-note = Cuánta superficie ocupa aquí un empleo en un salón, respecto de la que dicen los tipos de edificio: de 800 a 2,500 pies cuadrados, donde 1,645 es la media de una encuesta sobre lugares de reunión, de memoria y por comprobar antes de usarse.
factor-walking-planning-speed = velocidad a pie para planear
factor-walking-planning-speed-note = La velocidad que hace de un cuarto de milla cinco minutos, 3 millas por hora, con la que un recorrido de 400 m son cinco minutos en números redondos. Una sola velocidad para un plan; con ella se leen las áreas a pie. Tomar la dispersión de las velocidades de cruce como su incertidumbre es práctica común, sin fuente.
factor-walking-slower-speed = velocidad de los peatones más lentos
factor-walking-slower-speed-note = Seis de cada siete personas de más de 60 años cruzaron más rápido que el valor típico en un estudio nacional. Se lee para los mismos recorridos junto a la velocidad para planear; no representa a quienes usan ruedas o no pueden caminar.
factor-walking-crossing-speed-age-13-to-60 = velocidad de cruce, de 13 a 60 años
factor-walking-crossing-speed-age-13-to-60-note = Media y percentil 15 de un estudio nacional; no se registró nada por encima de la media, así que el rango termina ahí.
factor-walking-crossing-speed-over-60 = velocidad de cruce, más de 60 años
factor-walking-crossing-speed-over-60-note = Media y percentil 15 de un estudio nacional; no se registró nada por encima de la media, así que el rango termina ahí.
factor-walking-crossing-design-speed = velocidad a pie para tiempos de semáforo
factor-walking-crossing-design-speed-note = Una regla de diseño, no una media medida: el despeje peatonal a 3.5, el paso y el despeje juntos comprobados a 3.0. La edición de 2003 tenía 4.0.
factor-people-occupied-share = viviendas habitadas
factor-people-occupied-share-note = De todas las viviendas; las demás están vacías entre un hogar y otro o son segundas viviendas. De las casas y los apartamentos de un solo municipio; donde muchas viviendas son nuevas o de verano es menos.
factor-shops-floor-per-person = superficie de comercios por persona
factor-shops-floor-per-person-note = Superficie arrendable de todos los comercios del país entre sus habitantes, en 2006. La mayor parte está en centros más grandes que el de un vecindario, y mucha ha cerrado desde entonces.
factor-parks-land-per-person = suelo de parques por persona
factor-parks-land-per-person-note = 10.6 acres por cada 1,000 personas, la mediana de las agencias de parques que respondieron, con todos sus parques; las medianas de años anteriores fueron 9.9 y 10.1. El valor bajo es lo que un municipio pide a las viviendas nuevas para parques de vecindario.
factor-parks-people-per-park = personas por cada parque
factor-parks-people-per-park-note = La mediana de las agencias de parques que respondieron, con parques de todos los tamaños.
factor-parking-area-per-space = superficie por espacio de estacionamiento, con sus accesos
factor-parking-area-per-space-note = Un espacio de 9 por 18 pies y la mitad de un acceso de 24 pies a su lado son 270 pies cuadrados; entradas, extremos, aceras y plantas suman el resto. Bajo un edificio son unos 400, en lotes irregulares con plantas 430.
factor-walking-mean-walk = largo medio de un recorrido a pie
factor-walking-mean-walk-note = Una milla entre 1.71, el decaimiento de los recorridos de todo propósito tal como se recuerda del estudio; deja al 65 por ciento de los recorridos más largos que un cuarto de milla y al 18 por ciento más largos que una milla, como dice el resumen del estudio. Los recorridos al trabajo y por ejercicio son más largos, los de compras y escuelas más cortos.
factor-schools-site = terreno de una escuela primaria, antes de sus alumnos
factor-schools-site-note = Una guía antigua de planificadores escolares; un estado pedía 3. California permite que un terreno pequeño tenga la mitad de lo que recomienda.
factor-schools-site-per-seat = terreno de una escuela, por cada alumno
factor-schools-site-per-seat-note = Un acre por cada 100 alumnos, igual en la guía y en aquel estado.
factor-walking-crossing-check-speed = velocidad a pie con la que se comprueba un cruce entero
factor-walking-crossing-check-speed-note = Una regla de diseño: el paso y el despeje juntos deben permitir que alguien a esta velocidad llegue del botón al otro lado.
factor-walking-push-button = del botón peatonal al bordillo
factor-walking-push-button-note = Seis pies detrás del bordillo donde no hay botón.
