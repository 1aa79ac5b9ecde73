### El diario del taller.

log-entry-written = escrito: { $table } { $number }
log-entry-there = ya estaba, se deja como está: { $table } { $number }
log-half-filled = { $table } { $number } está a medias: falta { $keys } (oddside log change { $table } { $number } KEY=VALUE)
log-asked = { $table } { $number }: { $words }
log-sound = el archivo está sano: { $count } anotaciones
log-nothing-asked = nada se contradice
log-moved-in = { $file }: { $new } anotaciones nuevas, { $there } ya estaban
log-renumbered = { $table } { $was } es aquí el { $number }: su número estaba tomado
log-written-files = { $count } archivos escritos en { $folder }
log-salvaged = salvado: { $count } de { $table }
log-torn = una parte de { $table } no se puede leer; la última salvada lleva el número { $number }
log-links-lost = { $count } enlaces a anotaciones perdidas quedan vacíos
log-head-lost = la cabecera del archivo se había perdido y se repuso
log-newer = un oddside más nuevo escribió este diario: aquí solo se lee
log-head-half = a medias

## Lo que se pregunta

log-asks-poured-before-melted = colado antes de que el metal estuviera fundido: ¿cuál de las dos horas es la buena?
log-asks-poured-before-closed = colado antes de cerrar el molde: ¿cuál de las dos horas es la buena?
log-asks-opened-before-poured = el molde se abrió antes de colarlo: ¿cuál de las dos horas es la buena?
log-asks-closed-before-rammed = cerrado antes de apisonarlo: ¿cuál de las dos horas es la buena?
log-asks-heavier-than-charge = esta pieza pesa más que toda la carga de su fusión: pésela otra vez, o mire la carga
log-asks-castings-heavier-than-pour = sus piezas pesan juntas más de lo que se coló: pese otra vez
log-asks-more-out-than-in = de esta fusión salió más metal del que entró: pese otra vez
log-asks-another-metal = el molde se planeó para otro metal que el de la fusión: ¿es el molde bueno?
log-asks-which-degrees = más de 250 K fuera del plan: ¿se leyó en Fahrenheit?
log-asks-mould-poured-twice = este molde ya se coló: ¿es el molde bueno?
log-asks-contraction = contrajo más del 5 %, o creció: ¿es la misma medida en el modelo y en la pieza?
log-asks-good-with-defect = buena, y con un defecto grande: ¿es buena para su uso?
log-asks-humidity = la humedad del aire está entre 0 y 100 %
log-asks-moisture = ninguna arena de moldeo tiene esa humedad: entre 0 y 25 % de la masa húmeda
log-asks-below-nought = una masa, una longitud o un tiempo está por debajo de cero
