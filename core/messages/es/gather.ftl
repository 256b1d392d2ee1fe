# Plans of several tables are opened together as alternatives of one plan. $file is the name of a table's file.

gather-elsewhere = { $file } es de otro lugar de la Tierra y no se incorpora
gather-nothing-new = { $file } no dibuja nada que no esté ya
# The name of an alternative where another table's has the same.
gather-name = { $name }, { $file }
gather-site-differs = el límite del sitio de { $file } es distinto y no se incorpora
gather-program-differs = el programa de { $file } es distinto y no se incorpora
gather-settings-differ = los ajustes o factores de { $file } son distintos y no se incorporan
gather-ground-differs = las alturas del terreno de { $file } son distintas y no se incorporan
gather-picture-differs = la imagen de base de { $file } es distinta y no se incorpora
gather-opened = Se abrieron { $files } archivos: { $alternatives } alternativas lado a lado.
gather-not-all = No se incorporó todo lo que traen los archivos: { $reasons }.
