# Datos de base: archivos de calles, suelo y edificios hechos por otros. Lo que se dice mientras uno se lee, se revisa y se
# incorpora al plan.

bases-title = Datos de base
bases-begin = Datos de base
bases-about = Incorpore calles, edificios, parcelas, lugares, zonas y conteos de tráfico existentes desde un archivo: OpenStreetMap, GeoJSON, shapefiles, DXF o una tabla; y alturas del terreno desde una cuadrícula GeoTIFF, ASCII o HGT
bases-choose = Abrir un archivo de datos de base…
bases-reading = Leyendo { $file }…
bases-progress = Parte del archivo que se ha leído
bases-refused = No se pudo leer nada de { $file }. El plan se queda como está.
bases-read = { $count ->
    [0] Se leyó { $file }. No contiene nada que se pueda dibujar.
    [one] Se leyó { $file }. Contiene un elemento.
   *[other] Se leyó { $file }. Contiene { $count } elementos.
}
bases-cancel = Cancelar
bases-close = Cerrar
bases-take = Incorporar al plan
bases-faults = Lo que no se pudo leer y lo que conviene saber
# Leer el mismo archivo de otra manera.
bases-again = Leerlo de otra manera
bases-again-about = Si el archivo no dice su sistema de coordenadas, o dice uno equivocado, escríbalo: como EPSG:26986, una cadena PROJ o texto WKT. Escriba local si no tiene ninguno en la Tierra, para colocar a mano líneas, áreas, puntos y cuadrículas ASCII de alturas.
bases-again-system = Sistema de coordenadas
bases-again-x = Columna de x o longitud
bases-again-y = Columna de y o latitud
bases-again-read = Leer de nuevo

## Lo que contiene el archivo.

bases-credit = Atribución
bases-system = Coordenadas
bases-system-none = Propias; no dice en qué lugar de la Tierra está
bases-system-degrees = Longitud y latitud, WGS84
bases-unit = Unidad
bases-unit-degrees = Grados
bases-unit-meters = Metros
bases-unit-feet = Pies internacionales
bases-unit-survey-feet = Pies de agrimensura de EE. UU.
bases-unit-other = Una unidad propia
bases-size = Extensión
bases-extent = { $wide } de oeste a este, { $high } de sur a norte
bases-layers = Capas
# Capas de OpenStreetMap.
bases-layer-streets = Calles
bases-layer-places = Lugares
bases-layer-areas = Terrenos restringidos
bases-layer-barriers = Barreras
bases-layer-buildings = Edificios
# La capa de lo que tiene OpenStreetMap y un plan no.
bases-layer-other = Otros elementos
bases-classes = En qué se convierte
bases-in-file = En el archivo
bases-count = Cantidad
bases-becomes = Se convierte en
# Before a list that gives one meaning to all; its first line is bases-as-chosen.
bases-all-at-once = Todo se convierte en
bases-as-chosen = lo elegido abajo
bases-becomes-of = En qué se convierte { $name }
bases-becomes-nothing = Se deja fuera
# Dentro del sitio, suelo que se conserva como está; fuera de él, contexto.
bases-becomes-building = Edificio existente
bases-becomes-parcel = Parcela, propietario: { $owner }
# Una burbuja de este tipo de edificio antes de trazar calles; lo que da es aproximado.
bases-becomes-soft = Área tentativa, a grandes rasgos: { $use }
bases-show-all = Mostrar los { $count } tipos

## Dónde queda y cuánto se incorpora.

bases-place = Cuánto y dónde
bases-place-fixed = El plan ya tiene una ubicación; su origen se queda allí.
bases-place-new = El plan aún no tiene ubicación. Su origen se pone aquí, y aquí se queda.
bases-place-drawing = El archivo no dice dónde está. Su centro se pone en el origen del plan, a menos que usted escriba otra cosa.
bases-extent-field = Incorporar lo que está
bases-extent-site = en el rectángulo alrededor del sitio
bases-extent-within = solo dentro del sitio
bases-extent-around = alrededor del origen del plan
bases-margin = Y más allá hasta
bases-radius = A cada lado del origen
bases-longitude = Longitud del origen
bases-latitude = Latitud del origen
bases-drawing-unit = Una unidad del archivo
bases-zero-east = Cero del archivo, al este
bases-zero-north = Cero del archivo, al norte
bases-turn = Giro en sentido antihorario
bases-field-wrong = Un campo contiene algo que no se puede usar.

## Lo que se incorporaría.

# Cuántos elementos del archivo se incorporarían; el porcentaje se redondea hacia abajo.
bases-share = { $percent ->
    [0] Se incorporarían { $taken } de los { $count } elementos del archivo, menos del 1 %.
    [100] { $count ->
        [one] Se incorporaría el único elemento del archivo: todo lo que contiene.
       *[other] Se incorporarían los { $count } elementos del archivo: el archivo entero.
    }
   *[other] Se incorporarían { $taken } de los { $count } elementos del archivo: el { $percent } %.
}
bases-would-take = Se incorporaría:
bases-sketch = Lo que se incorporaría, como plano pequeño
# Detrás de un número, como «12 calles».
bases-kind = { $kind ->
    [site] límite del sitio
    [streets] { $count ->
        [one] calle
       *[other] calles
    }
    [places] { $count ->
        [one] lugar
       *[other] lugares
    }
    [areas] { $count ->
        [one] terreno restringido
       *[other] terrenos restringidos
    }
    [barriers] { $count ->
        [one] barrera
       *[other] barreras
    }
    [buildings] { $count ->
        [one] edificio
       *[other] edificios
    }
    [notes] { $count ->
        [one] nota
       *[other] notas
    }
    [soft] { $count ->
        [one] área tentativa aproximada
       *[other] áreas tentativas aproximadas
    }
    [heights] { $count ->
        [one] altura del terreno
       *[other] alturas del terreno
    }
   *[parcels] { $count ->
        [one] parcela
       *[other] parcelas
    }
}
bases-left-unchosen = { $count ->
    [one] Un elemento se deja fuera, como se eligió.
   *[other] { $count } elementos se dejan fuera, como se eligió.
}
bases-left-beyond = { $count ->
    [one] Un elemento está fuera del área.
   *[other] { $count } elementos están fuera del área.
}
bases-left-unfitting = { $count ->
    [one] Un elemento tiene otra forma que aquello en lo que se convertiría.
   *[other] { $count } elementos tienen otra forma que aquello en lo que se convertirían.
}
bases-left-known = { $count ->
    [one] Un elemento ya está en el plan.
   *[other] { $count } elementos ya están en el plan.
}
bases-left-holes = { $count ->
    [one] Se rellena un hueco, porque los contornos de un plan no tienen huecos.
   *[other] Se rellenan { $count } huecos, porque los contornos de un plan no tienen huecos.
}

## Cuando se incorpora, y por qué no se puede.

bases-step = incorporar datos de base
# list contiene números, cada uno seguido de bases-kind, separados por comas.
bases-taken = Incorporado de { $file }: { $list }.
bases-no-extent = La distancia debe ser un número de 0 a { $kilometers } km.
bases-no-site = Aún no se ha dibujado ningún sitio. Elija en su lugar una distancia alrededor del origen del plan.
bases-no-unit = La unidad debe ser mayor que 0 metros, y el giro un número de grados.
bases-placed = El plan ya tiene una ubicación. Su origen se queda donde está.
bases-nothing-chosen = No se ha elegido nada que se pueda incorporar. Elija capas y en qué se convierten.
bases-nothing-within =
    { $count ->
        [one] El único elemento elegido está fuera del área o demasiado lejos del plan.
       *[other] Los { $count } elementos elegidos están fuera del área o demasiado lejos del plan.
    }
bases-all-known =
    { $count ->
        [one] El plan ya tiene el único elemento elegido.
       *[other] El plan ya tiene los { $count } elementos elegidos.
    }
bases-too-many = Se incorporarían más de { $limit } elementos, más de los que permiten dibujar un plan. Elija un área más pequeña o menos capas.
bases-old-module = La parte de la página que lee datos de base es de otra versión. Vuelva a cargar la página.
bases-no-worker = El navegador no inicia ningún proceso auxiliar, que hace falta para leer datos de base.
bases-stopped = La lectura se detuvo: { $fault }
