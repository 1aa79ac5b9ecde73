# La página del navegador.

## A blank sheet, and the jobs of the folder

page-start = Una hoja en blanco
page-part = pieza
page-choose-mesh = elegir una malla de la pieza
page-drop-mesh = o soltar una en cualquier lugar de esta hoja: STL, OBJ, PLY o 3MF
page-name-of-job = nombre del trabajo
page-in-metal = se cuela en
page-make = Empezar la hoja
page-all-jobs = Todos los trabajos
page-no-jobs = Todavía no hay ningún trabajo en esta carpeta.
page-unreadable = su archivo no se puede leer
page-loading = Un momento: se está calculando.

## A mesh without a unit

page-unsettled = Primero hay que resolver la malla
page-unit-of-mesh = ¿De qué tamaño es la pieza?
page-unit-unknown = La malla no dice qué son sus números. Aquí está la pieza en cada unidad, a escala: elija la verdadera.
page-beside-hand = junto a una mano
page-beside-pencil = junto a un lápiz

## The strip and the head

page-what-to-do = Qué hacer con esta hoja
page-undo = Deshacer
page-redo = Rehacer
page-on-paper = en papel
page-print = Imprimir
page-is-changed = cambiado
page-working = Un momento: la hoja se calcula de nuevo.
page-server-gone = Oddside no responde. Lo que ha escrito queda guardado aquí y se enviará en cuanto responda; vuelva a iniciarlo si se detuvo.
page-stops = ALTO: no colar este trabajo tal como está
page-red-lines = Líneas rojas: cada una tiene que cumplirse antes de fundir
page-remarks = Observaciones

## What is typed

page-typed-for = Lo que se escribe
page-change = cambiar
page-taken-as = se toma como
page-blank = en blanco
page-unset = lo decide el programa
page-empty-leaves = Si queda vacío, lo decide el programa.
page-like = Se escribe como
page-keep = Guardar
page-give-up = Dejarlo
page-yes = sí
page-no = no
page-another-change = Esto se cambió mientras tanto, en otra ventana o en el propio archivo. ¿Cuál de los dos debe quedar?
page-theirs = lo que está ahora
page-mine = lo escrito aquí
page-keep-theirs = Dejar lo que está
page-use-mine = Poner lo mío en su lugar

## Why

page-why = por qué
page-because = Qué lo fija
page-formula = Fórmula
page-with-numbers = Con números
page-given = Lo que entró
page-range = Dónde vale
page-narrow = Qué lo estrecharía
page-mind = A tener en cuenta
page-sources = Fuentes
page-close = Cerrar

## The drawing

page-the-mould = El molde
page-flat = Planta y corte
page-no-solid-view = Este navegador no dibuja sólidos; el dibujo plano dice lo mismo.
page-stale = El programa se renovó desde que se abrió esta página: vuelva a cargarla.
page-point-at = Señale una parte para leer su nombre.
page-turning = Las flechas giran el molde, + y - lo acercan y lo alejan, Inicio (Home) lo deja como estaba; los botones hacen lo mismo.
page-cut = abrir en corte
page-cut-along = corte a lo largo
page-cut-across = corte a lo ancho
page-apart = desarmar
page-turn-left = Girar a la izquierda
page-turn-right = Girar a la derecha
page-tip-up = Desde arriba
page-tip-down = Desde abajo
page-nearer = Más cerca
page-farther = Más lejos
page-put-back = Volver a poner
page-save-picture = Guardar la imagen

## Maps on the drawing

page-map-of = Mostrar
page-map-mould = el molde
page-map-darker = Cuanto más oscuro, más hay.
page-map-nothing = sin valor ahí
page-map-cross = Señale un lugar para leer su valor, o lleve allí la cruz: Mayús y las flechas, con el cursor en la imagen.
page-map-legend = Qué dicen los tonos
map-wall = espesor
map-draught = salida
map-undercut = contrasalida
map-modulus = módulo
map-freezing = solidificación
map-wall-tells = El espesor de metal detrás de cada lugar de la piel: la bola más grande que cabe ahí. El mayor es de { $most } y solidifica al final.
map-draught-tells = La salida que falta a las paredes para su profundidad: falta en { $area }, hasta { $most }. El modelo lo recibe salvo que usted diga otra cosa.
map-draught-none = La salida que falta a las paredes para su profundidad: no falta en ninguna.
map-undercut-tells = Lo que de la piel no sale en ningún sentido: { $area }, con { $held } de arena retenida detrás.
map-undercut-none = Lo que de la piel no sale en ningún sentido: nada, toda deja la arena.
map-modulus-tells = El módulo de cada lugar, el metal sobre la superficie que lo enfría. El más pesado tiene { $most }; los tiempos de solidificación van con su cuadrado.
map-freezing-tells = Cuándo es sólido cada lugar, seguido en el molde. El último metal es sólido después de { $last }.
page-map-beyond = y más

## Gates and feeders moved on the plan

page-handles = Ataques y mazarotas en la junta: arrastre uno, o elíjalo y muévalo con las flechas, 1 mm cada vez.

## The pattern leaving the sand

page-draw-out = modelo extraído
page-draw-play = Mostrar el movimiento
page-draw-halt = Detenerlo
page-draw-tells = Se levanta la tapa y después se extrae el modelo hacia arriba, fuera de la base.

## Longer work

page-freezing = Seguir la solidificación
page-follow = Seguir la solidificación
page-follow-tells = Se sigue el calor del molde colado hasta que todo es sólido: cuándo solidifica cada lugar, qué queda aislado, cuándo se puede abrir. Tarda minutos, continúa con esta página cerrada, y se guarda en la carpeta de la pieza.
page-run-under-way = en marcha
page-run-waits = espera al anterior
page-run-left = falta más o menos
page-run-stop = Pararlo
page-run-stopped = parada; seguida de nuevo, continúa desde ahí
page-run-done = terminado; se guarda en la carpeta de la pieza
page-run-given-up = parada
page-runs = En curso
page-feeder = La mazarota más pequeña que alimenta
page-feeder-tells = El molde se construye con mazarotas de varios tamaños, y se sigue cada una hasta que todo está sólido. Tarda minutos y continúa cuando se cierra esta página.
page-feeder-search = Buscarla
page-run-failed = no resultó nada:
page-run-fresh = Se siguió la solidificación de este mismo molde. El corte pasa por el lugar que es sólido al final; sus líneas llevan minutos.
page-run-stale = Se siguió una solidificación, pero de otro plan: sígala de nuevo.

## Sand and shop

page-sand = Arena
page-shop = Taller
page-heap = El montón
page-ask-water = Qué humedad tiene, y qué le falta
page-ask-dry = El peso hasta el que secar
page-ask-stand = Cuánto puede esperar un molde
page-ask-recipe = Una mezcla, pesada
page-ask-fill = Escriba lo que sabe; lo que quede vacío se toma como en los libros.
page-ask-go = Calcular
page-settings = Unidades y palabras
page-furnace = El horno

## Experiments

page-trials = Ensayos
page-trial-none = Todavía no hay ningún ensayo en esta carpeta. Para empezar uno:
page-trial-plan = Guardar este plan
page-trial-more = Añadir una mezcla que los resultados sugieren
page-trial-cards = Tarjetas de las mezclas
page-trial-open = sin medir todavía
page-trial-differs = { $name } de la mezcla { $batch } vale ya { $before }, y ahora se escribe { $now }. ¿Qué significa?
page-trial-far = { $name } de la mezcla { $batch }: { $now } queda lejos de todos los demás ({ $low } a { $high }). ¿Es correcto?
page-trial-off-plan = { $name } de la mezcla { $batch }: { $now } pesado, { $planned } previsto. ¿Es correcto?
page-trial-replace = El primero estaba mal; se queda en el archivo
page-trial-again = La mezcla se midió otra vez
page-trial-sure = Es correcto
page-pictures = Gráficos

## The log

page-log = Diario
page-log-new = Anotar una colada
page-log-of-job = lo que se coló
page-log-planned = previsto:
page-log-good = buenas, de
page-log-write = Anotar
page-log-written = Está en el diario.
page-log-empty = Todavía no hay ninguna colada en el diario.
page-log-pour = Colada { $number } · { $job } · { $metal }
page-log-mould = Molde { $number } y su arena
page-log-heat = Fusión { $number }
page-log-casting = Pieza { $number }
page-log-look = ¿Qué tiene de malo?
page-log-record = Lo que se anotó ese día
page-log-causes = ¿De qué puede venir?
page-log-wrong = Algo salió mal
page-log-asked = Lo que se contradice
page-log-accept = Llevar al archivo del taller:

## The sand on the page

page-sand-tests = La arena tal como se ensayó
page-sand-book = El libro del montón
page-sand-nothing = Todavía no se deduce nada: rellene lo que ha ensayado.

## A part that is described

page-described = cómo se da
page-as-mesh = una malla
page-like-what = a qué se parece

## A class, and the words of the trade

page-lesson = Lección
page-lesson-class = La clase
page-lesson-pupils = alumnos, una pieza cada uno
page-lesson-sessions = lecciones en que vienen
page-lesson-minutes = minutos de una lección
page-lesson-adults = adultos junto al fuego
page-lesson-flasks = cajas del tamaño del plan
page-lesson-flasks-left = las del archivo del taller
page-lesson-lay = Repartir en lecciones
page-lesson-plan = Plan para la clase
page-lesson-tasks = Lo que calcula el alumno
page-lesson-answers-apart = Las respuestas se imprimen en una hoja aparte. No están en esta página, que quizá mire una clase.
page-glossary = Glosario
page-glossary-seek = una palabra o parte de ella, en cualquier idioma
page-glossary-count = palabras encontradas:
page-glossary-none = Ninguna entrada tiene esta palabra.
page-glossary-words = Palabras del oficio
page-glossary-sheet = Palabras del oficio en esta hoja

## The bench card of a job

page-bench-card = Tarjeta de taller
page-bench-phone = En un teléfono emparejado: apunte la cámara a los cuadros, o abra
page-bench-no-phone = Para un teléfono con guantes: inicie el programa como oddside serve DIR --lan, y los cuadros para la cámara están aquí.
page-lead = Rellenar:
