# La hoja del alumno y las respuestas: lo que se calcula con lápiz, la regla en palabras y los números
# que entran en ella.

pupil-title = Hoja del alumno
answers-title = Respuestas a la hoja del alumno
pupil-name = Nombre
pupil-lead = Calcúlelo antes de la colada. Bastan tres cifras; el dorso es para calcular. Un número con un cuadrado delante es su propia respuesta de más arriba.
answers-lead = Calculado con los números impresos en la hoja del alumno, para que concuerde con el lápiz; una pequeña diferencia es del redondeo. Al lado está lo que dice el plan, que cuenta cuánto puede errar cada número.
pupil-answer = Respuesta
answers-in-the-plan = el plan: { $band }
pupil-your-answer = su respuesta { $number }
pupil-then = Después de la colada
pupil-weighed = Pieza pesada, fría
pupil-filled = Segundos de llenado, con reloj
pupil-longest = Lado más largo, medido
pupil-least-sure = ¿Cuál de sus números erró más, y cómo lo mediría mejor?
pupil-foot = Cálculos a lápiz con tablas, sin simulación. Junto al fuego solo quien tiene una tarea; antes valen el maestro y la norma local.

pencil-pattern-length = modelo = pieza acabada × (1 + contracción)
pencil-casting-mass = masa = volumen × densidad
pencil-poured-mass = vertido = piezas × (una pieza + una mazarota) + metal del sistema de colada
pencil-charge = carga = vertido × (1 + parte para la lingotera) ÷ (1 − merma)
pencil-sand-to-fill-the-flask = arena = (interior de la caja − modelos) × densidad de la arena apisonada
pencil-sand-to-have-ready = preparar = arena apisonada × 1,15, por lo que cae y lo que se enrasa
pencil-choke-area = sección = vertido ÷ (densidad × tiempo × descarga × √(2 × gravedad × altura))
pencil-cope-lift = empuje = densidad × (sombra × altura − hueco sobre la junta), dicho por la masa que levantaría
pencil-weight-on-the-cope = peso = golpe × empuje − caja superior, hasta el medio kilo siguiente; nada si es negativo
pencil-freezing-time-of-the-heaviest-section = tiempo = constante × módulo × módulo

pencil-number-above-joint = hueco sobre la junta
pencil-number-casting = una pieza
pencil-number-castings = piezas
pencil-number-constant = constante
pencil-number-contraction = contracción
pencil-number-cope = caja superior apisonada
pencil-number-density = densidad
pencil-number-discharge = descarga
pencil-number-feeder = una mazarota
pencil-number-flask = interior de la caja
pencil-number-head = altura
pencil-number-lift = empuje
pencil-number-liquid-density = densidad, líquido
pencil-number-loss = merma
pencil-number-part = pieza acabada
pencil-number-pattern = modelos
pencil-number-pig-share = parte para la lingotera
pencil-number-poured = vertido
pencil-number-rammed = arena apisonada
pencil-number-running = sistema de colada
pencil-number-section = módulo
pencil-number-shadow = sombra sobre la junta
pencil-number-surge = golpe
pencil-number-time = tiempo
pencil-fall = gravedad
pencil-number-volume = volumen

## Una clase

class-head = { $job } para { $pupils } alumnos
class-moulds = moldes
class-flasks = cajas en uso
class-groups = grupos a la vez
class-heats = fusiones
class-metal = metal que colar en total
class-sessions = sesiones que hacen falta
class-step = sesión { $session }, de { $from } a { $to } min: { $what }
class-safety = todos juntos: gafas, zapatos y pelo; quién hace qué; nadie sopla ni barre arena seca
class-ram = cada grupo apisona su molde, saca el modelo, no sopla nada, lo cierra y lo marca
class-clear = ordenar, cubrir los moldes, lavarse las manos
class-safety-fire = todos juntos: quién está dónde, la línea que nadie pasa, qué se hace si se derrama metal
class-melt-again = se funde la siguiente carga; los grupos resuelven la hoja del alumno y anotan las primeras coladas
class-pour = los adultos cuelan, molde a molde; los alumnos cronometran y anotan
class-cool = nadie toca un molde; resolver mientras la hoja del alumno
class-shake-out = los grupos abren sus moldes con guantes, sobre arena seca; las piezas siguen calientes mucho tiempo
class-look = pesar, medir, buscar defectos; anotarlo en el diario
class-after = después de la sesión { $session }, y no antes de { $wait } min desde la última colada: los adultos abren los moldes con guantes, sobre arena seca; la clase pesa, mide y busca defectos cuando vuelva a reunirse, en { $look } min
class-heats-more = si un molde toma todo lo que puede, hacen falta { $heats } fusiones, cada una de { $minutes } min más: pese lo que tomó el primer molde antes de cargar la siguiente
class-role-riddles = arena: la criba, la pesa y la trae
class-role-rams = apisonador: llena y apisona
class-role-joins = moldeador: empolva, airea, saca el modelo, cierra
class-role-writes = secretario: cronometra, pesa y anota
class-role-clears = encargado: mantiene suelo y herramientas en orden, avisa cuando algo estorba
class-role-turns = los papeles cambian en cada molde o a medio tiempo; en un grupo pequeño un alumno tiene dos
class-role-fire = solo los { $adults } adultos están junto al fuego: uno cuela, otro cuida la línea
class-group-large = { $pupils } alumnos por grupo: con más de { $most } algunos miran; tenga más cajas o apisone en dos turnos
class-group-small = menos de { $least } alumnos por grupo: los papeles se doblan y apisonar tarda más
class-too-few = hacen falta { $needed } sesiones y hay { $sessions }: tenga más cajas, un crisol mayor, menos piezas o sesiones más largas
class-sand-short = { $wanted } de arena para todos los moldes y un montón de { $heap }: apisone en dos turnos o pida arena prestada
class-melt = el horno se enciende { $minutes } min antes de la sesión en que se cuela
class-overnight = los moldes esperan a la sesión siguiente: cúbralos con un paño húmedo y palpe cada piel antes de cerrar
class-distance = quien no tiene tarea está a 2 m del metal y de la colada, tras una línea en el suelo
class-ingot = una lingotera seca y caliente está lista para lo que sobre
class-water = ni agua, ni arena húmeda, ni bebida cerca del metal
class-feet = cuero sobre los zapatos, pantalón largo por fuera, nada que se funda sobre la piel
class-bearing = lo que aquí se cuela no carga, no aguanta presión y no frena nada
class-minutes = los minutos son un juicio, para alumnos que apisonan su primer molde: cronometre su clase y cámbielos
