# The command line. Names of commands and options, and what is told to give in capitals, are the same in every language.
# Lists of options stand in columns. A line that goes on with a bracket is quoted with the blanks before it, which would be
# lost otherwise.

command-line-usage =
    uso: hobnail measure PLAN.geojson [opciones]      todas las cifras de un plan
         hobnail measure DIR --table OUT.csv          las primeras cifras de todos los planes de una carpeta
         hobnail export PLAN.geojson --to FORMAT      un plan para otros programas
         hobnail network STREETS.geojson [opciones]   mide una simple red de calles
         hobnail open ADDRESS                         el archivo de plan de una dirección
         hobnail COMMAND --help                       lo que acepta un comando
         hobnail --version

    Un archivo puede ser - para la entrada estándar. Con --language es, todo se dice en español; en es inglés.
    Códigos de salida: 0 todo bien, 1 se midió y hay cosas que corregir, 2 no se pudo ejecutar.

command-line-usage-measure =
    uso: hobnail measure PLAN.geojson [--alternative NAME] [--phases ID,ID] [--without OWNERS] [--today]
    { "                     [--json]" } [--basis FIGURE] [--language CODE]
         hobnail measure DIR --table OUT.csv [--units us|metric] [--language CODE]

    Mide una alternativa de un archivo de plan: la primera, si no se nombra ninguna. PLAN puede ser - para la
    entrada estándar. Un plan sin terminar o con errores se mide tal como está, y los errores se indican.

      --alternative NAME  cuál alternativa
      --phases ID,ID      solo estas etapas, por su número en el plan; lo existente está en todas las etapas
      --without OWNERS    se retiene y no se cuenta el suelo de estos grupos de propietarios: public (públicos),
                          willing (dispuestos), unknown (sin consultar), unwilling (no dispuestos)
      --today             lo que existe hoy: calles y lugares existentes; los usos son propuestas y no se cuentan
      --json              todas las cifras con sus rangos, en JSON
      --basis FIGURE      cómo se calculó una cifra, hasta sus fuentes
      --table OUT.csv     las cifras al lado del dibujo de cada archivo de plan (.geojson, .json) de una carpeta,
                          una línea por alternativa, por nombre; - para la salida estándar
      --units UNITS       unidades de esa tabla: us (de EE. UU.) o metric (métricas); si no, las del primer plan
      --language CODE     en qué idioma hablar: en (inglés, el predeterminado) o es (español)

    Códigos de salida: 0 todo bien, 1 se midió y hay cosas que corregir, 2 no se pudo ejecutar.

command-line-usage-export =
    uso: hobnail export PLAN.geojson --to FORMAT [--alternative NAME] [--scale N] [--units us|metric]
    { "                    [--base" } URL] [--language CODE]

    Escribe una alternativa de un archivo de plan (la primera, si no se nombra ninguna) para otros programas, en
    la salida estándar. PLAN puede ser - para la entrada estándar. Los errores del plan se indican.

      --to FORMAT         svg       el dibujo a escala exacta, por capas
                          dxf       el dibujo para programas de dibujo técnico (AC1015), en las mismas capas y con todo
                                    lo que rodea el sitio: solo svg termina algo más allá
                          geojson   todo lo que se deriva, con sus cifras: manzanas, suelo, lotes, edificios,
                                    calles, intersecciones, frentes, áreas a pie, lugares (RFC 7946)
                          csv       todas las cifras con su rango, su origen y sus fuentes
                          address   una dirección desde la que se abre todo el plan; se dice qué no va en ella
      --alternative NAME  cuál alternativa
      --scale N           escala de un dibujo: 1000 o 1:1000, o 100ft para una pulgada a cien pies (si no,
                          1:1000, o 1:1200 en unidades de EE. UU.); en dxf solo ajusta el tamaño de las letras
      --base URL          la dirección de la página, delante de la del plan; si no, solo la parte del plan
      --units UNITS       unidades de la tabla o del dibujo: us (de EE. UU.) o metric (métricas); si no, las del plan
      --language CODE     en qué idioma hablar: en (inglés, el predeterminado) o es (español)

    Códigos de salida: 0 todo bien, 1 se exportó y hay cosas que corregir, 2 no se pudo ejecutar.

command-line-usage-network =
    uso: hobnail network STREETS.geojson [--points POINTS.geojson] [--meters] [--about LON,LAT]
    { "                     [--tolerance M]" } [--within 200,400,800] [--json] [--language CODE]

    Mide las calles de un archivo GeoJSON (LineString, MultiLineString): qué encierran, cómo se conectan y,
    desde los puntos de un segundo archivo, quién camina cuánto. Cualquiera de los dos archivos puede ser - para
    la entrada estándar. Las coordenadas son longitud y latitud en grados (RFC 7946), salvo con --meters.

      --points FILE     puntos con un role: origin (también si no se da ninguno), sample, dwelling (con un
                        número dwellings), place (con use y area_m2)
      --meters          las coordenadas son metros al este y al norte
      --about LON,LAT   medir los grados en torno a este lugar y no al centro de las calles
      --tolerance M     unir los extremos de calles a una calle así de cercana, en metros (0 a 10; si no, 0)
      --within LIST     distancias de las áreas a pie, en metros (si no, 200,400,800)
      --json            todos los números en JSON
      --language CODE   en qué idioma hablar: en (inglés, el predeterminado) o es (español)

    Códigos de salida: 0 todo bien, 1 se midió y hay cosas que corregir, 2 no se pudo ejecutar.

command-line-usage-open =
    uso: hobnail open ADDRESS [--language CODE]

    Escribe el archivo de plan de una dirección, o solo de lo que sigue a su #. ADDRESS puede ser - para la
    entrada estándar.

      --language CODE  en qué idioma hablar: en (inglés, si no se indica otro) o es (español)

    Códigos de salida: 0 bien, 2 no se pudo ejecutar.

## What is wrong with the words given; stands behind "hobnail: ", or the name of the command and a colon.

command-line-no-command = no existe el comando { $name }
command-line-no-option = no existe la opción { $option }
command-line-needs-value = { $option } necesita un valor
command-line-no-language = --language: no existe { $code }; hay: { $codes }
command-line-no-plan = ¿cuál plan? nombre un archivo, o - para la entrada estándar
command-line-one-plan = un plan a la vez, no { $count }: { $names }
command-line-no-address = ¿qué dirección? indique una, o - para la entrada estándar
command-line-one-address = una dirección a la vez, no { $count }
command-line-today-phases = --today va sin --phases: nada de lo propuesto existe hoy
command-line-to-what = ¿a qué formato? --to y uno de: { $formats }
command-line-no-format = --to: no existe { $word }; hay: { $formats }
command-line-no-scale = --scale: { $word } no es una escala como 1000, 1:1000 o 100ft, de 1:50 a 1:100000
command-line-no-units = --units: { $word } no es us ni metric
command-line-not-with-table = { $option } no va con --table
command-line-one-folder = --table acepta una carpeta de archivos de plan, no { $count }
command-line-no-plan-files = { $folder }: no hay ningún archivo que termine en .geojson o .json
command-line-table-faults = { $count ->
    [one] 1 línea de la tabla señala errores
   *[other] { $count } líneas de la tabla señalan errores
}
# These stand behind the name of an option and a colon; word is what was given.
command-line-not-a-phase = { $word } no es el número de una etapa
command-line-no-owners = { $word } no es un grupo de propietarios; hay: { $words }
command-line-number-count = { $count } números en lugar de { $wanted }
command-line-not-numbers = { $word } no es un número ni números separados por comas
command-line-no-streets = no se dio ningún archivo de calles
command-line-one-file = un solo archivo de calles, no también { $names }
command-line-one-input = las calles y los puntos no pueden venir ambos de la entrada estándar
command-line-about-meters = --about va con grados, no con --meters

## Files. error is English of the operating system.

command-line-standard-input = entrada estándar
command-line-standard-output = salida estándar
command-line-can-not-read = { $file }: no se puede leer: { $error }
command-line-can-not-write = { $file }: no se puede escribir: { $error }
