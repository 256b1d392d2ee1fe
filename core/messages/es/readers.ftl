# What is said when a file of base data can not be read, or only in part. The readers name these messages; each fault is
# shown with its place, in a column of its own.

readers-empty = El archivo está vacío.
readers-unknown-format = No es ninguno de los formatos que se pueden leer: OpenStreetMap, GeoJSON, shapefiles en un zip, DXF, tablas con coordenadas, GeoTIFF, cuadrículas ASCII, HGT o archivos de georreferencia.
readers-broken = El archivo está dañado o no es lo que dice ser: { $detail }
readers-not-utf8 = El texto no está en UTF-8. Guárdelo de nuevo con esa codificación.
readers-too-many-positions = El archivo contiene más de { $limit } puntos. Elija un área menor o menos capas.
readers-too-many-cells = La cuadrícula tiene más de { $limit } celdas dentro del área. Elija un área menor.
readers-too-many-bytes = El archivo descomprimido ocupa más de { $limit } bytes.
readers-no-system = El archivo no dice en qué sistema de coordenadas está. Elija uno.
readers-no-place = El archivo no dice en qué sistema de coordenadas está. Escriba uno abajo; o escriba local, y lo que contiene se coloca a mano, como un dibujo cuyo lugar en la Tierra no se conoce.
readers-unknown-system = Aquí no se conoce el sistema de coordenadas «{ $system }». Elija otro o guarde el archivo en longitud y latitud.
readers-uncertain-datum = No se sabe cómo se sitúa el sistema de coordenadas «{ $system }» respecto de WGS84: todo puede estar desplazado hasta 200 m.
readers-off-earth = Una posición no está en la Tierra, está demasiado lejos o fuera del alcance de la proyección. Lo que la tiene se omitió.
readers-missing-file = Falta { $name }.
readers-open-ring = Un contorno no se cierra con lo que contiene el archivo. Se omitió el área o una parte de ella.
readers-missing-points =
    { $count ->
        [one] Un punto al que esto se refiere no está en el archivo. La línea queda interrumpida ahí.
       *[other] { $count } puntos a los que esto se refiere no están en el archivo. La línea queda interrumpida ahí.
    }
readers-not-read =
    { $count ->
        [one] No se leyó un elemento del tipo { $kind }.
       *[other] No se leyeron { $count } elementos del tipo { $kind }.
    }
readers-fitted-splines =
    { $count ->
        [one] Una curva se da solo por los puntos por los que pasa. Pasa por todos ellos; entre ellos sigue el trazado de este lector, que puede diferir un poco del que tenía en el programa que la dibujó.
       *[other] { $count } curvas se dan solo por los puntos por los que pasan. Pasan por todos ellos; entre ellos siguen el trazado de este lector, que puede diferir un poco del que tenían en el programa que las dibujó.
    }
readers-too-deep = El bloque «{ $name }» está demasiado anidado en otros o en sí mismo. Se omitió ahí.
readers-no-coordinates = No se reconocieron columnas con coordenadas. Indique cuáles son.
readers-not-a-number = «{ $value }» no es un número.
readers-too-few-values = La cuadrícula anuncia { $expected } valores y tiene { $found }. El resto queda sin alturas.
readers-no-heights = Este TIFF contiene colores y no alturas, y los navegadores no muestran TIFF. Para ponerlo bajo el dibujo, guárdelo como PNG o JPEG con un archivo de georreferencia y elija los dos juntos.
readers-picture-apart = Un archivo de georreferencia solo dice dónde está una imagen. Elíjalo o suéltelo junto con la imagen, los dos con el mismo nombre, como mapa.jpg y mapa.jgw, y no dentro de un zip.
readers-unnamed-corner = El nombre de un archivo HGT debe decir dónde está, como N42W072.hgt.
readers-no-unit = El archivo no dice su unidad de longitud. Se tomaron metros.
# columns son los nombres que tienen en el archivo, como AADT_2022, separados por comas.
readers-traffic-counts = Columnas con conteos de tráfico: { $columns }. Cada conteo se vuelve una nota en su lugar, la del año más reciente si hay varios; lo que por sus otras columnas es una calle, un lugar o algo así sigue siéndolo. Las notas son palabras sobre el dibujo, que ninguna cifra cuenta. Lo que el tráfico significa para calles y cruces corresponde a estudios de tráfico de profesionales autorizados.
# columns como arriba, por ejemplo ZONING.
readers-zones = Columnas con zonas o usos del suelo: { $columns }. Cada área recibe una nota con su código si no elige otra cosa; las parcelas no reciben ninguna. Ninguna cifra cuenta las notas. Como área tentativa muestra muy a grandes rasgos lo que su suelo podría albergar con el tipo de edificio que elija, que no es lo que la zona permite: eso solo lo dicen la normativa local y quienes la aplican.
readers-too-many-zones = Solo se distinguen los primeros { $limit } códigos de zonas o usos del suelo; todos los demás de una columna forman un solo tipo.
readers-nothing-within = Nada del archivo está dentro del área.
readers-more-faults =
    { $count ->
        [one] Hay un problema más.
       *[other] Hay { $count } problemas más.
    }

readers-place-file = Todo el archivo
readers-place-byte = Byte { $number }
readers-place-line = Línea { $number }
readers-place-record = Registro { $number } de { $layer }
readers-place-named = { $name }
