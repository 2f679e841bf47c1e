<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name>advice bridge</name>
    <message>
        <source>Nothing sets the units apart: connectors and embrasures have no accent.</source>
        <translation>Nichts hebt die Einheiten voneinander ab: Verbinder und Interdentalräume haben keinen Akzent.</translation>
    </message>
    <message>
        <source>One coat of a warm dark accent on the facing surfaces of both units (menu Plan, Accent over connectors).</source>
        <translation>Ein Auftrag eines warmen dunklen Akzents auf den zugewandten Flächen beider Einheiten (Menü Plan, Akzent über die Verbinder).</translation>
    </message>
    <message>
        <source>Common practice, no published source.</source>
        <translation>Übliche Praxis, keine veröffentlichte Quelle.</translation>
    </message>
    <message>
        <source>Move the step, or keep it if it is meant so: the prediction knows the order.</source>
        <translation>Verschieben Sie den Schritt, oder lassen Sie ihn, wenn es so gemeint ist: Die Vorhersage berücksichtigt die Reihenfolge.</translation>
    </message>
</context>
<context>
    <name>advice coats</name>
    <message>
        <source>{name}: the last coat of {liquid} adds {room:.0f} % of what a first one does.</source>
        <translation>{name}: Der letzte Auftrag von {liquid} bringt {room:.0f} % dessen, was ein erster bringt.</translation>
    </message>
    <message>
        <source>Leave coats out, or take a stronger liquid.</source>
        <translation>Lassen Sie Aufträge weg, oder nehmen Sie eine stärkere Flüssigkeit.</translation>
    </message>
    <message>
        <source>{area}: {coats:g} coat; usual: {limit}.</source>
        <translation>{area}: {coats:g} Auftrag; üblich: {limit}.</translation>
    </message>
    <message>
        <source>{area}: {coats:g} coats; usual: {limit}.</source>
        <translation>{area}: {coats:g} Aufträge; üblich: {limit}.</translation>
    </message>
    <message>
        <source>Beyond it the starter materials leave the colours of natural teeth</source>
        <translation>Darüber verlassen die Mustermaterialien die Farben natürlicher Zähne</translation>
    </message>
    <message>
        <source>{name}: {names} undo {undone:.0f} % of each other&apos;s hue and chroma and still take {darker:.1f} L*.</source>
        <translation>{name}: {names} heben Farbton und Sättigung gegenseitig zu {undone:.0f} % auf und nehmen doch {darker:.1f} L*.</translation>
    </message>
    <message>
        <source>Without them the area would be as near to what is wanted, as far as is seen.</source>
        <translation>Ohne sie wäre die Fläche dem Ziel ebenso nah, soweit man es sieht.</translation>
    </message>
    <message>
        <source>Fewer coats of both give about the same hue and a lighter tooth.</source>
        <translation>Weniger Aufträge beider geben etwa denselben Farbton und einen helleren Zahn.</translation>
    </message>
    <message>
        <source>A bare strip, {width:.1f} mm wide, {length:.0f} mm long, {place}.</source>
        <translation>Ein ungefärbter Streifen, {width:.1f} mm breit, {length:.0f} mm lang, {place}.</translation>
    </message>
    <message>
        <source>{count} bare strips, up to {width:.1f} mm wide, {length:.0f} mm long together, {place}.</source>
        <translation>{count} ungefärbte Streifen, bis {width:.1f} mm breit, zusammen {length:.0f} mm lang, {place}.</translation>
    </message>
    <message>
        <source>Let the areas meet, or paint what lies between them.</source>
        <translation>Lassen Sie die Flächen zusammenstoßen, oder malen Sie, was zwischen ihnen liegt.</translation>
    </message>
    <message>
        <source>in the {area} area</source>
        <translation>in der Fläche {area}</translation>
    </message>
    <message>
        <source>at the margin</source>
        <translation>am Kronenrand</translation>
    </message>
    <message>
        <source>between {area} and {other}</source>
        <translation>zwischen {area} und {other}</translation>
    </message>
    <message>
        <source>The fissure is up to {widest:.1f} mm wide: too wide for a fine brush.</source>
        <translation>Die Fissur ist bis {widest:.1f} mm breit: zu breit für einen feinen Pinsel.</translation>
    </message>
    <message>
        <source>Narrow the area with the eraser or the zone sliders.</source>
        <translation>Machen Sie die Fläche mit dem Radierer oder den Zonenreglern schmaler.</translation>
    </message>
    <message>
        <source>Grinding {depth:g} mm off contacts on the {area} leaves lighter spots, {change:.1f} dE00.</source>
        <translation>{depth:g} mm Abschleifen an Kontakten ({area}) hinterlässt hellere Flecken, {change:.1f} dE00.</translation>
    </message>
    <message>
        <source>Grinding {depth:g} mm off contacts on the {area} leaves darker spots, {change:.1f} dE00.</source>
        <translation>{depth:g} mm Abschleifen an Kontakten ({area}) hinterlässt dunklere Flecken, {change:.1f} dE00.</translation>
    </message>
    <message>
        <source>Check the bite before staining, or paint tips and ridges less.</source>
        <translation>Prüfen Sie den Biss vor dem Färben, oder färben Sie Spitzen und Leisten weniger.</translation>
    </message>
    <message>
        <source>Planned grinding.</source>
        <translation>Geplantes Beschleifen.</translation>
    </message>
    <message>
        <source>Assumed: {origin}</source>
        <translation>Angenommen: {origin}</translation>
    </message>
    <message>
        <source>{name}: its coats turn it green, a* {a:.1f}, {fall:.1f} below the bare block.</source>
        <translation>{name} wird durch die Aufträge grünlich, a* {a:.1f}, {fall:.1f} unter dem ungefärbten Rohling.</translation>
    </message>
    <message>
        <source>Take a redder liquid for part of the coats, or fewer coats.</source>
        <translation>Nehmen Sie für einen Teil der Aufträge eine rötere Flüssigkeit, oder weniger Aufträge.</translation>
    </message>
</context>
<context>
    <name>advice desk</name>
    <message>
        <source>hide advice</source>
        <translation>Hinweis ausblenden</translation>
    </message>
    <message>
        <source>show hidden advice</source>
        <translation>ausgeblendete Hinweise zeigen</translation>
    </message>
</context>
<context>
    <name>advice file</name>
    <message>
        <source>There is no limit called &apos;{name}&apos;.</source>
        <translation>Eine Grenze namens „{name}“ gibt es nicht.</translation>
    </message>
    <message>
        <source>Known: {name}.</source>
        <translation>Bekannt: {name}.</translation>
    </message>
    <message>
        <source>The limit &apos;{name}&apos; is given in {value}.</source>
        <translation>Die Grenze „{name}“ ist in {value} angegeben.</translation>
    </message>
    <message>
        <source>no unit</source>
        <translation>keiner Einheit</translation>
    </message>
    <message>
        <source>Give it in {unit}.</source>
        <translation>Geben Sie sie in {unit} an.</translation>
    </message>
    <message>
        <source>Correct it with a text editor, or take it away: the shipped limits hold then.</source>
        <translation>Berichtigen Sie sie mit einem Texteditor, oder nehmen Sie sie weg: Dann gelten die mitgelieferten Grenzen.</translation>
    </message>
    <message>
        <source>This is not a table of limits that this program reads.</source>
        <translation>Das ist keine Tabelle von Grenzen, die dieses Programm liest.</translation>
    </message>
    <message>
        <source>One starts with: format = &quot;{format_}&quot;, version = {version}.</source>
        <translation>Eine solche beginnt mit: format = &quot;{format_}&quot;, version = {version}.</translation>
    </message>
    <message>
        <source>The limit &apos;{twice}&apos; stands there twice.</source>
        <translation>Die Grenze „{twice}“ steht dort zweimal.</translation>
    </message>
    <message>
        <source>An entry does not fit: {error}.</source>
        <translation>Ein Eintrag passt nicht: {error}.</translation>
    </message>
</context>
<context>
    <name>advice limits</name>
    <message>
        <source>The limit &apos;{name}&apos; is {value}.</source>
        <translation>Die Grenze „{name}“ ist {value}.</translation>
    </message>
    <message>
        <source>Give 0 or more.</source>
        <translation>Geben Sie 0 oder mehr an.</translation>
    </message>
    <message>
        <source>The limit &apos;{name}&apos; has no source.</source>
        <translation>Die Grenze „{name}“ hat keine Quelle.</translation>
    </message>
    <message>
        <source>Say where it comes from, if only &apos;my own experience&apos;.</source>
        <translation>Sagen Sie, woher sie kommt, und sei es „eigene Erfahrung“.</translation>
    </message>
    <message>
        <source>There is no limit called &apos;{name}&apos; for advice.</source>
        <translation>Für Hinweise gibt es keine Grenze namens „{name}“.</translation>
    </message>
    <message>
        <source>The shipped table of limits has been damaged: install the program again.</source>
        <translation>Die mitgelieferte Tabelle der Grenzen ist beschädigt: Installieren Sie das Programm neu.</translation>
    </message>
</context>
<context>
    <name>advice order</name>
    <message>
        <source>Neighbour {number} cannot be compared: {message}</source>
        <translation>Nachbar {number} ist nicht vergleichbar: {message}</translation>
    </message>
    <message>
        <source>The body is {step:.1f} L* lighter than neighbour {number}.</source>
        <translation>Der Körper ist {step:.1f} L* heller als Nachbar {number}.</translation>
    </message>
    <message>
        <source>The body is {step:.1f} L* darker than neighbour {number}.</source>
        <translation>Der Körper ist {step:.1f} L* dunkler als Nachbar {number}.</translation>
    </message>
    <message>
        <source>Inside the uncertainty.</source>
        <translation>Innerhalb der Unsicherheit.</translation>
    </message>
    <message>
        <source>Change the coats of the body, or ask whether the shade or the neighbour decides.</source>
        <translation>Ändern Sie die Aufträge des Körpers, oder fragen Sie, ob die Farbe oder der Nachbar entscheidet.</translation>
    </message>
    <message>
        <source>One standard deviation of the step: ±{doubt:.1f} L*.</source>
        <translation>Eine Standardabweichung des Unterschieds: ±{doubt:.1f} L*.</translation>
    </message>
    <message>
        <source>{number} comes out {step:.1f} L* lighter than {other} beside it.</source>
        <translation>{number} wird {step:.1f} L* heller als {other} daneben.</translation>
    </message>
    <message>
        <source>Give the units coats of their own, or a wall or backing that is more alike.</source>
        <translation>Geben Sie den Einheiten eigene Aufträge, eine ähnlichere Wandstärke oder einen ähnlicheren Untergrund.</translation>
    </message>
    <message>
        <source>No tooth number is given.</source>
        <translation>Keine Zahnnummer ist angegeben.</translation>
    </message>
    <message>
        <source>Say which tooth it is.</source>
        <translation>Sagen Sie, welcher Zahn es ist.</translation>
    </message>
    <message>
        <source>Two units are called {number}.</source>
        <translation>Zwei Einheiten heißen {number}.</translation>
    </message>
    <message>
        <source>Give each unit its own tooth number.</source>
        <translation>Geben Sie jeder Einheit eine eigene Zahnnummer.</translation>
    </message>
    <message>
        <source>the block</source>
        <translation>den Rohling</translation>
    </message>
    <message>
        <source>any jar</source>
        <translation>irgendeinen Napf</translation>
    </message>
    <message>
        <source>the jars</source>
        <translation>die Näpfe</translation>
    </message>
    <message>
        <source>jar {names}</source>
        <translation>Napf {names}</translation>
    </message>
    <message>
        <source>jars {names}</source>
        <translation>die Näpfe {names}</translation>
    </message>
    <message>
        <source>No lot is noted for {parts}.</source>
        <translation>Keine Charge ist vermerkt für {parts}.</translation>
    </message>
    <message>
        <source>Note them before the first coat: a remake is explained by them.</source>
        <translation>Vermerken Sie sie vor dem ersten Auftrag: Eine Neuanfertigung wird durch sie erklärt.</translation>
    </message>
</context>
<context>
    <name>advice panel</name>
    <message>
        <source>Nothing to say about this plan.</source>
        <translation>Zu diesem Plan ist nichts zu sagen.</translation>
    </message>
    <message>
        <source>Nothing else to say about this plan.</source>
        <translation>Sonst ist zu diesem Plan nichts zu sagen.</translation>
    </message>
    <message>
        <source>show me</source>
        <translation>zeigen</translation>
    </message>
    <message>
        <source>Hide this advice</source>
        <translation>Diesen Hinweis ausblenden</translation>
    </message>
    <message>
        <source>Hide this advice in this case (Del). It can be shown again.</source>
        <translation>Diesen Hinweis in diesem Fall ausblenden (Entf). Er kann wieder gezeigt werden.</translation>
    </message>
    <message>
        <source>unmark</source>
        <translation>Marke löschen</translation>
    </message>
    <message>
        <source>Hide this advice: {sentence}</source>
        <translation>Diesen Hinweis ausblenden: {sentence}</translation>
    </message>
    <message>
        <source>Return: show me.</source>
        <translation>Eingabetaste: zeigen.</translation>
    </message>
    <message>
        <source>Advice</source>
        <translation>Hinweise</translation>
    </message>
    <message>
        <source>Show again what was hidden in this case</source>
        <translation>Wieder zeigen, was in diesem Fall ausgeblendet wurde</translation>
    </message>
    <message>
        <source>{hidden} hidden: show again</source>
        <translation>{hidden} ausgeblendet: wieder zeigen</translation>
    </message>
    <message>
        <source>to settle</source>
        <translation>zu klären</translation>
    </message>
    <message>
        <source>to check</source>
        <translation>zu prüfen</translation>
    </message>
    <message>
        <source>noted</source>
        <translation>zur Kenntnis</translation>
    </message>
</context>
<context>
    <name>advice value</name>
    <message>
        <source>Limit: {said}. {origin}</source>
        <translation>Grenze: {said}. {origin}</translation>
    </message>
</context>
<context>
    <name>advice walls</name>
    <message>
        <source>{area:.1f} {square} of wall of {tooth} are below {least:.2f} mm after grinding (thinnest {thinnest:.2f} mm).</source>
        <translation>{area:.1f} {square} Wand von {tooth} liegen nach dem Beschleifen unter {least:.2f} mm (dünnste Stelle {thinnest:.2f} mm).</translation>
    </message>
    <message>
        <source>{area:.1f} {square} of wall are below {least:.2f} mm after grinding (thinnest {thinnest:.2f} mm).</source>
        <translation>{area:.1f} {square} Wand liegen nach dem Beschleifen unter {least:.2f} mm (dünnste Stelle {thinnest:.2f} mm).</translation>
    </message>
    <message>
        <source>{area:.1f} {square} of wall of {tooth} are below {least:.2f} mm (thinnest {thinnest:.2f} mm).</source>
        <translation>{area:.1f} {square} Wand von {tooth} liegen unter {least:.2f} mm (dünnste Stelle {thinnest:.2f} mm).</translation>
    </message>
    <message>
        <source>{area:.1f} {square} of wall are below {least:.2f} mm (thinnest {thinnest:.2f} mm).</source>
        <translation>{area:.1f} {square} Wand liegen unter {least:.2f} mm (dünnste Stelle {thinnest:.2f} mm).</translation>
    </message>
    <message>
        <source>Make the wall thicker there, or choose a block that allows it.</source>
        <translation>Machen Sie die Wand dort dicker, oder wählen Sie einen Rohling, der es zulässt.</translation>
    </message>
    <message>
        <source>The least wall of block {name}, as the materials give it</source>
        <translation>Mindestwandstärke des Rohlings {name} nach Angabe der Materialien</translation>
    </message>
    <message>
        <source>The last {length} above the margin is left out.</source>
        <translation>Der letzte Streifen von {length} über dem Kronenrand ist ausgelassen.</translation>
    </message>
    <message>
        <source>Connector {teeth}: {section:.1f} {square}; {value:g} {square} or more is usual there.</source>
        <translation>Verbinder {teeth}: {section:.1f} {square}; üblich sind dort {value:g} {square} oder mehr.</translation>
    </message>
    <message>
        <source>Have the connector made larger, above all in height.</source>
        <translation>Lassen Sie den Verbinder größer machen, vor allem höher.</translation>
    </message>
    <message>
        <source>The stump ({stump}) shines through on {area:.0f} {square}: darker, up to {worst:.1f} dE00.</source>
        <translation>Der Stumpf ({stump}) scheint auf {area:.0f} {square} durch: dunkler, bis zu {worst:.1f} dE00.</translation>
    </message>
    <message>
        <source>The stump ({stump}) shines through on {area:.0f} {square}: lighter, up to {worst:.1f} dE00.</source>
        <translation>Der Stumpf ({stump}) scheint auf {area:.0f} {square} durch: heller, bis zu {worst:.1f} dE00.</translation>
    </message>
    <message>
        <source>The stump of {teeth} ({stump}) shines through on {area:.0f} {square}: darker, up to {worst:.1f} dE00.</source>
        <translation>Der Stumpf von {teeth} ({stump}) scheint auf {area:.0f} {square} durch: dunkler, bis zu {worst:.1f} dE00.</translation>
    </message>
    <message>
        <source>The stump of {teeth} ({stump}) shines through on {area:.0f} {square}: lighter, up to {worst:.1f} dE00.</source>
        <translation>Der Stumpf von {teeth} ({stump}) scheint auf {area:.0f} {square} durch: heller, bis zu {worst:.1f} dE00.</translation>
    </message>
    <message>
        <source>Plan a thicker wall, a more opaque cement or a more opaque block.</source>
        <translation>Planen Sie eine dickere Wand, einen opakeren Zement oder einen opakeren Rohling.</translation>
    </message>
    <message>
        <source>Against the same bare wall over &apos;{nominal}&apos;, which the block&apos;s colour is given for; the prediction holds it already.</source>
        <translation>Gegen dieselbe ungefärbte Wand über „{nominal}“, für die die Farbe des Rohlings angegeben ist; die Vorhersage enthält es schon.</translation>
    </message>
    <message>
        <source>Nobody has said what lies behind; {stump} is assumed.</source>
        <translation>Es ist nicht angegeben, was dahinter liegt; {stump} wird angenommen.</translation>
    </message>
    <message>
        <source>Choose the stump on the intake page.</source>
        <translation>Wählen Sie den Stumpf in der Fallaufnahme.</translation>
    </message>
    <message>
        <source>Draft: nobody has said what lies behind {area:.1f} {square} of wall below {limit:.1f} mm (thinnest {thinnest:.2f} mm).</source>
        <translation>Entwurf: Es ist nicht angegeben, was hinter {area:.1f} {square} Wand unter {limit:.1f} mm liegt (dünnste Stelle {thinnest:.2f} mm).</translation>
    </message>
    <message>
        <source>A thinner wall shows what lies behind it</source>
        <translation>Eine dünnere Wand zeigt, was hinter ihr liegt</translation>
    </message>
    <message>
        <source>A fast programme: {minutes:.0f} min, cold to opening.</source>
        <translation>Ein schnelles Programm: {minutes:.0f} min, kalt bis zum Öffnen.</translation>
    </message>
    <message>
        <source>Choose a slower programme; the makers of block and oven decide.</source>
        <translation>Wählen Sie ein langsameres Programm; es entscheiden die Hersteller von Rohling und Ofen.</translation>
    </message>
    <message>
        <source>&apos;{name}&apos; with {count} units: at most {value:g} is usual.</source>
        <translation>„{name}“ mit {count} Einheiten: üblich sind höchstens {value:g}.</translation>
    </message>
    <message>
        <source>&apos;{name}&apos; with walls up to {thickest:.1f} mm: at most {value:g} mm is usual.</source>
        <translation>„{name}“ mit Wänden bis {thickest:.1f} mm: üblich sind höchstens {value:g} mm.</translation>
    </message>
</context>
<context>
    <name>advising</name>
    <message>
        <source>No advice: {error}</source>
        <translation>Keine Hinweise: {error}</translation>
    </message>
    <message>
        <source>Your own limits for advice are left out: {error}</source>
        <translation>Ihre eigenen Grenzen für Hinweise bleiben unbeachtet: {error}</translation>
    </message>
</context>
<context>
    <name>after dialog</name>
    <message>
        <source>as all of it</source>
        <translation>wie die ganze Fläche</translation>
    </message>
    <message>
        <source>After sintering</source>
        <translation>Nach dem Sintern</translation>
    </message>
    <message>
        <source>Stain lies near the surface: grinding exposes paler ceramic. The prediction shows what is left.</source>
        <translation>Die Färbung liegt nahe der Oberfläche: Beschleifen legt hellere Keramik frei. Die Vorhersage zeigt, was bleibt.</translation>
    </message>
    <message>
        <source>Finish</source>
        <translation>Oberfläche</translation>
    </message>
    <message>
        <source>ground away</source>
        <translation>abgeschliffen</translation>
    </message>
    <message>
        <source>mm, sintered</source>
        <translation>mm, gesintert</translation>
    </message>
    <message>
        <source>all of the outside</source>
        <translation>die ganze Außenfläche</translation>
    </message>
    <message>
        <source>Effects of finish and depth are assumed until a laboratory has measured them. Walls get thinner by grinding: keep to the smallest the block&apos;s maker allows.</source>
        <translation>Wirkungen von Oberfläche und Tiefe sind angenommen, bis ein Labor sie gemessen hat. Beschleifen macht Wände dünner: Halten Sie die Mindestwandstärke ein, die der Hersteller des Rohlings angibt.</translation>
    </message>
    <message>
        <source>Ground away from {name}</source>
        <translation>Abgeschliffen von {name}</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
</context>
<context>
    <name>answers</name>
    <message>
        <source>No crown is open.</source>
        <translation>Keine Krone ist offen.</translation>
    </message>
    <message>
        <source>Open a mesh or a case first.</source>
        <translation>Öffnen Sie zuerst ein Netz oder einen Fall.</translation>
    </message>
</context>
<context>
    <name>areas</name>
    <message>
        <source>cervical</source>
        <translation>Zahnhals</translation>
    </message>
    <message>
        <source>body</source>
        <translation>Körper</translation>
    </message>
    <message>
        <source>interproximal</source>
        <translation>Approximal</translation>
    </message>
    <message>
        <source>cusp</source>
        <translation>Höcker</translation>
    </message>
    <message>
        <source>fissure</source>
        <translation>Fissur</translation>
    </message>
    <message>
        <source>inner surface</source>
        <translation>Innenfläche</translation>
    </message>
    <message>
        <source>margin band</source>
        <translation>Randstreifen</translation>
    </message>
    <message>
        <source>marginal ridge</source>
        <translation>Randleiste</translation>
    </message>
    <message>
        <source>triangular ridge</source>
        <translation>Dreieckswulst</translation>
    </message>
    <message>
        <source>line angle</source>
        <translation>Kantenlinie</translation>
    </message>
    <message>
        <source>connector and embrasure</source>
        <translation>Verbinder, Interdentalraum</translation>
    </message>
    <message>
        <source>neck band inside</source>
        <translation>Hals innen</translation>
    </message>
    <message>
        <source>tissue side</source>
        <translation>Basalseite</translation>
    </message>
    <message>
        <source>incisal</source>
        <translation>Schneide</translation>
    </message>
</context>
<context>
    <name>assembly</name>
    <message>
        <source>This looks like a tooth with its roots: cut off the crown at its neck to plan it.</source>
        <translation>Das sieht nach einem Zahn mit Wurzeln aus: Schneiden Sie die Krone am Zahnhals ab, um sie zu planen.</translation>
    </message>
    <message>
        <source>This looks like a jaw, or a piece of one with several teeth: cut off the crown that is meant to plan it.</source>
        <translation>Das sieht nach einem Kiefer aus oder einem Stück davon mit mehreren Zähnen: Schneiden Sie die gemeinte Krone ab, um sie zu planen.</translation>
    </message>
    <message>
        <source>Mesial cannot point along the occlusal axis.</source>
        <translation>Mesial kann nicht entlang der Kauachse zeigen.</translation>
    </message>
    <message>
        <source>Give a direction to the side, along the row of teeth.</source>
        <translation>Geben Sie eine Richtung zur Seite an, entlang der Zahnreihe.</translation>
    </message>
    <message>
        <source>The cavity opens toward the side that was set as the biting side.</source>
        <translation>Die Höhlung öffnet sich zu der Seite, die als Kauseite gesetzt wurde.</translation>
    </message>
    <message>
        <source>The occlusal axis is only guessed; check that the biting side is up.</source>
        <translation>Die Kauachse ist nur vermutet; prüfen Sie, ob die Kauseite oben ist.</translation>
    </message>
    <message>
        <source>The surface is open: it has no inner surface, and a wall is assumed.</source>
        <translation>Die Oberfläche ist offen: Sie hat keine Innenfläche, und eine Wand wird angenommen.</translation>
    </message>
    <message>
        <source>The body is solid: it has no inner surface, and a wall is assumed.</source>
        <translation>Der Körper ist massiv: Er hat keine Innenfläche, und eine Wand wird angenommen.</translation>
    </message>
    <message>
        <source>No fossae were found; cusps and fissures are only roughly placed.</source>
        <translation>Es wurden keine Gruben gefunden; Höcker und Fissuren liegen nur ungefähr.</translation>
    </message>
    <message>
        <source>The shape does not tell which side of tooth {number} is mesial.</source>
        <translation>Die Form sagt nicht, welche Seite von Zahn {number} mesial ist.</translation>
    </message>
    <message>
        <source>Which side is mesial is only guessed; check it.</source>
        <translation>Welche Seite mesial ist, ist nur vermutet; prüfen Sie es.</translation>
    </message>
    <message>
        <source>The file holds {count} separate bodies; only the largest is read.</source>
        <translation>Die Datei enthält {count} getrennte Körper; nur der größte wird gelesen.</translation>
    </message>
</context>
<context>
    <name>atomic</name>
    <message>
        <source>The disk does not answer, or is no longer there.</source>
        <translation>Der Datenträger antwortet nicht oder ist nicht mehr da.</translation>
    </message>
    <message>
        <source>Choose another folder.</source>
        <translation>Wählen Sie einen anderen Ordner.</translation>
    </message>
    <message>
        <source>The disk is full.</source>
        <translation>Der Datenträger ist voll.</translation>
    </message>
    <message>
        <source>Free some space, or choose another disk.</source>
        <translation>Schaffen Sie Platz, oder wählen Sie einen anderen Datenträger.</translation>
    </message>
    <message>
        <source>Your share of the disk is used up.</source>
        <translation>Ihr Anteil am Datenträger ist aufgebraucht.</translation>
    </message>
    <message>
        <source>The disk is read-only.</source>
        <translation>Der Datenträger ist nur lesbar.</translation>
    </message>
    <message>
        <source>You may not write here.</source>
        <translation>Sie dürfen hier nicht schreiben.</translation>
    </message>
    <message>
        <source>The folder does not exist.</source>
        <translation>Der Ordner existiert nicht.</translation>
    </message>
    <message>
        <source>Choose another folder, or make it first.</source>
        <translation>Wählen Sie einen anderen Ordner, oder legen Sie ihn zuerst an.</translation>
    </message>
    <message>
        <source>Part of the path is a file, not a folder.</source>
        <translation>Ein Teil des Pfads ist eine Datei, kein Ordner.</translation>
    </message>
    <message>
        <source>There is a folder of that name.</source>
        <translation>Einen Ordner dieses Namens gibt es schon.</translation>
    </message>
    <message>
        <source>Choose another name.</source>
        <translation>Wählen Sie einen anderen Namen.</translation>
    </message>
    <message>
        <source>The name is too long.</source>
        <translation>Der Name ist zu lang.</translation>
    </message>
    <message>
        <source>Choose a shorter name.</source>
        <translation>Wählen Sie einen kürzeren Namen.</translation>
    </message>
    <message>
        <source>is a folder</source>
        <translation>ist ein Ordner</translation>
    </message>
    <message>
        <source>It cannot be written ({why}).</source>
        <translation>Es kann nicht geschrieben werden ({why}).</translation>
    </message>
    <message>
        <source>There is a file of that name, not a folder.</source>
        <translation>Dort liegt eine Datei dieses Namens, kein Ordner.</translation>
    </message>
</context>
<context>
    <name>attempt</name>
    <message>
        <source>A trainee needs initials or a code.</source>
        <translation>Zu einem Namen gehören Initialen oder ein Kürzel.</translation>
    </message>
    <message>
        <source>Type some, as &quot;AB&quot;.</source>
        <translation>Geben Sie welche ein, etwa „AB“.</translation>
    </message>
    <message>
        <source>The code of a trainee has {count} characters; {most_code_characters} are kept.</source>
        <translation>Das Kürzel hat {count} Zeichen; {most_code_characters} werden behalten.</translation>
    </message>
    <message>
        <source>Use initials or a short code, not a full name.</source>
        <translation>Nehmen Sie Initialen oder ein kurzes Kürzel, keinen vollen Namen.</translation>
    </message>
    <message>
        <source>&quot;{code}&quot; is no code of a trainee.</source>
        <translation>„{code}“ ist kein Kürzel.</translation>
    </message>
    <message>
        <source>Use letters and digits, with single hyphens or blanks between, as &quot;AB-07&quot;.</source>
        <translation>Nehmen Sie Buchstaben und Ziffern, mit einzelnen Bindestrichen oder Leerzeichen dazwischen, etwa „AB-07“.</translation>
    </message>
    <message>
        <source>A skill&apos;s name has 1 to {most_name_characters} characters.</source>
        <translation>Der Name einer Fertigkeit hat 1 bis {most_name_characters} Zeichen.</translation>
    </message>
    <message>
        <source>A score of {score:g} is not between 0 and 100.</source>
        <translation>Eine Bewertung von {score:g} liegt nicht zwischen 0 und 100.</translation>
    </message>
    <message>
        <source>The details of an attempt are a JSON object.</source>
        <translation>Die Einzelheiten eines Versuchs sind ein JSON-Objekt.</translation>
    </message>
    <message>
        <source>An exercise and its kind need names of 1 to {most_name_characters} characters.</source>
        <translation>Eine Übung und ihre Art brauchen Namen von 1 bis {most_name_characters} Zeichen.</translation>
    </message>
    <message>
        <source>&apos;{digest}&apos; is no SHA-256.</source>
        <translation>„{digest}“ ist keine SHA-256.</translation>
    </message>
    <message>
        <source>The seed {seed} is not between 0 and {most_seed}.</source>
        <translation>Der Startwert {seed} liegt nicht zwischen 0 und {most_seed}.</translation>
    </message>
    <message>
        <source>A time of an attempt has no time zone.</source>
        <translation>Eine Zeit eines Versuchs hat keine Zeitzone.</translation>
    </message>
    <message>
        <source>An attempt cannot end before it begins.</source>
        <translation>Ein Versuch kann nicht enden, bevor er beginnt.</translation>
    </message>
    <message>
        <source>This cannot be kept as JSON ({error}).</source>
        <translation>Das kann nicht als JSON aufbewahrt werden ({error}).</translation>
    </message>
</context>
<context>
    <name>backing dialog</name>
    <message>
        <source>as in the other units</source>
        <translation>wie bei den anderen Einheiten</translation>
    </message>
    <message>
        <source>inside the crown</source>
        <translation>in der Krone</translation>
    </message>
    <message>
        <source>pontic</source>
        <translation>Brückenglied</translation>
    </message>
    <message>
        <source>incisal edge</source>
        <translation>Schneidekante</translation>
    </message>
    <message>
        <source>screw channel</source>
        <translation>Schraubenkanal</translation>
    </message>
    <message>
        <source>What lies behind</source>
        <translation>Was dahinter liegt</translation>
    </message>
    <message>
        <source>Thin walls show what lies behind them; a dark stump lowers value most where the wall is thinnest.</source>
        <translation>Dünne Wände zeigen, was hinter ihnen liegt; ein dunkler Stumpf senkt die Helligkeit dort am meisten, wo die Wand am dünnsten ist.</translation>
    </message>
    <message>
        <source>region</source>
        <translation>Bereich</translation>
    </message>
    <message>
        <source>behind the wall</source>
        <translation>hinter der Wand</translation>
    </message>
    <message>
        <source>cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>inside {name}</source>
        <translation>in {name}</translation>
    </message>
    <message>
        <source>Behind {name}</source>
        <translation>Hinter {name}</translation>
    </message>
    <message>
        <source>Cement, {name}</source>
        <translation>Zement, {name}</translation>
    </message>
    <message>
        <source>Cement thickness, {name}</source>
        <translation>Zementdicke, {name}</translation>
    </message>
</context>
<context>
    <name>batch size</name>
    <message>
        <source>Estimate: area in milled size times the film that a coat takes, which is assumed until somebody has measured it.</source>
        <translation>Schätzung: Fläche in gefräster Größe mal dem Film, den ein Auftrag braucht; dieser ist angenommen, bis ihn jemand gemessen hat.</translation>
    </message>
    <message>
        <source>The coats do not fit the plan and the surface.</source>
        <translation>Die Aufträge passen nicht zu Plan und Oberfläche.</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>{most_units} units and more</source>
        <translation>{most_units} Einheiten und mehr</translation>
    </message>
    <message>
        <source>1 unit</source>
        <translation>1 Einheit</translation>
    </message>
    <message>
        <source>{units} units</source>
        <translation>{units} Einheiten</translation>
    </message>
</context>
<context>
    <name>bench dialog</name>
    <message>
        <source>nothing yet</source>
        <translation>noch nichts</translation>
    </message>
    <message>
        <source>{count} cases ({whose})</source>
        <translation>{count} Fälle ({whose})</translation>
    </message>
    <message>
        <source>State on the bench</source>
        <translation>Stand der Arbeit</translation>
    </message>
    <message>
        <source>What has been done of {names}? Marks of later stages are taken back.</source>
        <translation>Was ist bei {names} erledigt? Marken späterer Stufen werden zurückgenommen.</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Erledigt</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>Marked so far: {marks}.</source>
        <translation>Bisher vermerkt: {marks}.</translation>
    </message>
    <message>
        <source>Nothing has been marked so far.</source>
        <translation>Bisher ist nichts vermerkt.</translation>
    </message>
</context>
<context>
    <name>bench look</name>
    <message>
        <source>Jar {number} holds a dye that the materials do not have.</source>
        <translation>Napf {number} enthält einen Farbstoff, den die Materialien nicht haben.</translation>
    </message>
    <message>
        <source>Add the dye to the materials, or mix the jar without it.</source>
        <translation>Fügen Sie den Farbstoff den Materialien hinzu, oder mischen Sie den Napf ohne ihn.</translation>
    </message>
</context>
<context>
    <name>bench order</name>
    <message>
        <source>Usual order: inner surface and neck, then cusps and marginal ridges, accents last (common practice, no published source).</source>
        <translation>Übliche Reihenfolge: Innenfläche und Zahnhals, dann Höcker und Randleisten, Akzente zuletzt (übliche Praxis, keine veröffentlichte Quelle).</translation>
    </message>
    <message>
        <source>Step {number} paints &apos;{before}&apos; after step {latest} painted &apos;{after}&apos;; usually it comes before.</source>
        <translation>Schritt {number} färbt „{before}“, nachdem Schritt {latest} „{after}“ gefärbt hat; üblich ist vorher.</translation>
    </message>
</context>
<context>
    <name>bench record</name>
    <message>
        <source>When &apos;{stage}&apos; was done has no time zone.</source>
        <translation>Der Zeitpunkt von „{stage}“ hat keine Zeitzone.</translation>
    </message>
    <message>
        <source>The stages of the bench record are out of order.</source>
        <translation>Die Stufen des Arbeitsstands sind nicht in der Reihenfolge.</translation>
    </message>
    <message>
        <source>&apos;{after}&apos; ({later}) would lie before &apos;{before}&apos; ({at}).</source>
        <translation>„{after}“ ({later}) läge vor „{before}“ ({at}).</translation>
    </message>
    <message>
        <source>Give a later time.</source>
        <translation>Geben Sie eine spätere Zeit an.</translation>
    </message>
</context>
<context>
    <name>block choice</name>
    <message>
        <source>common practice, no published source</source>
        <translation>übliche Praxis, keine veröffentlichte Quelle</translation>
    </message>
    <message>
        <source>lighter than {first}: the lightest block</source>
        <translation>heller als {first}: der hellste Rohling</translation>
    </message>
    <message>
        <source>from {first} to {third}: the second block</source>
        <translation>von {first} bis {third}: der zweite Rohling</translation>
    </message>
    <message>
        <source>darker than {third}, {family}: the third block</source>
        <translation>dunkler als {third}, {family}: der dritte Rohling</translation>
    </message>
    <message>
        <source>a shade nearest to {name}</source>
        <translation>eine Farbe, {name} am nächsten</translation>
    </message>
    <message>
        <source>It needs three blocks of one class.</source>
        <translation>Es braucht drei Rohlinge einer Klasse.</translation>
    </message>
    <message>
        <source>The rule says nothing of the {family} family.</source>
        <translation>Die Regel sagt nichts über die Gruppe {family}.</translation>
    </message>
    <message>
        <source>Usual choice for {tab}: none. {rule}</source>
        <translation>Übliche Wahl für {tab}: keine. {rule}</translation>
    </message>
    <message>
        <source>Computed: {block}; {figures}.</source>
        <translation>Errechnet: {block}; {figures}.</translation>
    </message>
    <message>
        <source>Usual choice for {tab}: {named} ({rule}; {provenance}).</source>
        <translation>Übliche Wahl für {tab}: {named} ({rule}; {provenance}).</translation>
    </message>
    <message>
        <source>the same</source>
        <translation>derselbe</translation>
    </message>
    <message>
        <source>{block}, as good</source>
        <translation>{block}, ebenso gut</translation>
    </message>
    <message>
        <source>Computed: {same}; {figures}.</source>
        <translation>Errechnet: {same}; {figures}.</translation>
    </message>
    <message>
        <source>Computed: {block}; {figures}. On {usual}: {usual_figures}.</source>
        <translation>Errechnet: {block}; {figures}. Auf {usual}: {usual_figures}.</translation>
    </message>
    <message>
        <source>{area} {de00:.1f} dE00 from what is wanted, the furthest area {largest:.1f}, {coats} coats</source>
        <translation>{area} {de00:.1f} dE00 vom Ziel, die fernste Fläche {largest:.1f}, {coats} Aufträge</translation>
    </message>
    <message>
        <source>Wanted L* {lightness:.1f}; {block} without any stain is predicted at L* {bare:.1f} here: not reachable, stain only lowers value and adds chroma.</source>
        <translation>Ziel L* {lightness:.1f}; {block} ohne jede Färbung wird hier mit L* {bare:.1f} vorhergesagt: nicht erreichbar, Färbung senkt nur die Helligkeit und erhöht die Sättigung.</translation>
    </message>
    <message>
        <source>Wanted C* {chroma:.1f}; {block} without any stain is predicted at C* {bare:.1f} here: not reachable, stain only lowers value and adds chroma.</source>
        <translation>Ziel C* {chroma:.1f}; {block} ohne jede Färbung wird hier mit C* {bare:.1f} vorhergesagt: nicht erreichbar, Färbung senkt nur die Helligkeit und erhöht die Sättigung.</translation>
    </message>
    <message>
        <source>The difference is made by the {area}: {de00:.1f} dE00 on {block} (predicted L* {lightness:.1f} C* {chroma:.1f}, wanted L* {wanted:.1f} C* {wanted_chroma:.1f}), {other_de00:.1f} on {other}.</source>
        <translation>Den Unterschied macht {area}: {de00:.1f} dE00 auf {block} (vorhergesagt L* {lightness:.1f} C* {chroma:.1f}, Ziel L* {wanted:.1f} C* {wanted_chroma:.1f}), {other_de00:.1f} auf {other}.</translation>
    </message>
    <message>
        <source>Both come as near; {block} needs {effort}, {other} {other_effort}.</source>
        <translation>Beide kommen gleich nah; {block} braucht {effort}, {other} {other_effort}.</translation>
    </message>
</context>
<context>
    <name>blocks</name>
    <message>
        <source>No {scattering} zirconia of {nominal_thickness_mm} mm over &apos;{name}&apos; has the colour {text}: the nearest it can have is {text_2}, dE00 {remaining_de00:.1f} away.</source>
        <translation>Keine {scattering}-Zirkonoxidplatte von {nominal_thickness_mm} mm über „{name}“ hat die Farbe {text}: Am nächsten kommt {text_2}, dE00 {remaining_de00:.1f} entfernt.</translation>
    </message>
    <message>
        <source>Check the reading, its thickness and backing, or give one of a thicker plate.</source>
        <translation>Prüfen Sie die Messung, ihre Dicke und ihren Untergrund, oder geben Sie eine von einer dickeren Platte an.</translation>
    </message>
    <message>
        <source>The nominal colour was measured in {geometry} geometry.</source>
        <translation>Die Nennfarbe wurde in der Geometrie {geometry} gemessen.</translation>
    </message>
    <message>
        <source>Give a reading in {geometry} geometry without gloss; others do not compare.</source>
        <translation>Geben Sie eine Messung in der Geometrie {geometry} ohne Glanz an; andere sind nicht vergleichbar.</translation>
    </message>
    <message>
        <source>The nominal colour is for {illuminant} and {observer_degrees} degrees.</source>
        <translation>Die Nennfarbe gilt für {illuminant} und {observer_degrees} Grad.</translation>
    </message>
    <message>
        <source>Give one of {lights}, and 2 or 10 degrees.</source>
        <translation>Geben Sie eine für {lights} an, und 2 oder 10 Grad.</translation>
    </message>
</context>
<context>
    <name>body kind</name>
    <message>
        <source>{longest:.3g} mm long and {shortest:.3g} mm thick</source>
        <translation>{longest:.3g} mm lang und {shortest:.3g} mm dick</translation>
    </message>
    <message>
        <source>The body is {size}: too small for a crown.</source>
        <translation>Der Körper ist {size}: zu klein für eine Krone.</translation>
    </message>
    <message>
        <source>The body is {size} and in one piece: too large for a crown.</source>
        <translation>Der Körper ist {size} und aus einem Stück: zu groß für eine Krone.</translation>
    </message>
    <message>
        <source>The body has no fossae or grooves anywhere, as every crown has.</source>
        <translation>Der Körper hat nirgends Gruben oder Furchen, wie jede Krone sie hat.</translation>
    </message>
</context>
<context>
    <name>bridge accents</name>
    <message>
        <source>Over connectors and in embrasures: {liquids}, which sets the units apart (common practice).</source>
        <translation>Über Verbindern und in Interdentalräumen: {liquids}, das hebt die Einheiten voneinander ab (übliche Praxis).</translation>
    </message>
    <message>
        <source>Connectors and embrasures stay plain: {why}.</source>
        <translation>Verbinder und Interdentalräume bleiben schlicht: {why}.</translation>
    </message>
    <message>
        <source>There is no connector to paint.</source>
        <translation>Es gibt keinen Verbinder zu färben.</translation>
    </message>
    <message>
        <source>A bridge has connectors once its zones are proposed.</source>
        <translation>Eine Brücke hat Verbinder, sobald ihre Zonen vorgeschlagen sind.</translation>
    </message>
    <message>
        <source>No liquid is a warm dark accent.</source>
        <translation>Keine Flüssigkeit ist ein warmer dunkler Akzent.</translation>
    </message>
    <message>
        <source>Give one a purpose that begins with &apos;warm dark accent&apos;.</source>
        <translation>Geben Sie einer einen Zweck, der mit „warm dark accent“ beginnt.</translation>
    </message>
    <message>
        <source>no warm dark accent is at hand</source>
        <translation>kein warmer dunkler Akzent ist vorhanden</translation>
    </message>
    <message>
        <source>{liquid} would need a further jar</source>
        <translation>{liquid} bräuchte einen weiteren Napf</translation>
    </message>
    <message>
        <source>what lies below takes the usual limit ({limit})</source>
        <translation>was darunter liegt, schöpft die übliche Grenze aus ({limit})</translation>
    </message>
</context>
<context>
    <name>brush</name>
    <message>
        <source>A brush has a radius of 0.1 to 3 mm and a softness of 0 to 1.</source>
        <translation>Ein Pinsel hat einen Radius von 0.1 bis 3 mm und eine Weichheit von 0 bis 1.</translation>
    </message>
    <message>
        <source>A brush puts on more than 0 and at most {most} coats.</source>
        <translation>Ein Pinsel trägt mehr als 0 und höchstens {most} Aufträge auf.</translation>
    </message>
    <message>
        <source>removes brushed {liquid} of step {step}</source>
        <translation>entfernt gepinseltes {liquid} von Schritt {step}</translation>
    </message>
    <message>
        <source>adds to step {step}, {liquid}</source>
        <translation>verstärkt Schritt {step}, {liquid}</translation>
    </message>
    <message>
        <source>fills up to creases: step {step}, {liquid}</source>
        <translation>füllt bis zu den Furchen: Schritt {step}, {liquid}</translation>
    </message>
    <message>
        <source>line along a crease: step {step}, {liquid}</source>
        <translation>Linie entlang einer Furche: Schritt {step}, {liquid}</translation>
    </message>
    <message>
        <source>gives back the proposal</source>
        <translation>gibt den Vorschlag zurück</translation>
    </message>
    <message>
        <source>takes away from {area}</source>
        <translation>nimmt weg: {area}</translation>
    </message>
    <message>
        <source>paints {area}</source>
        <translation>malt {area}</translation>
    </message>
    <message>
        <source>fills up to creases: {area}</source>
        <translation>füllt bis zu den Furchen: {area}</translation>
    </message>
    <message>
        <source>line along a crease: {area}</source>
        <translation>Linie entlang einer Furche: {area}</translation>
    </message>
    <message>
        <source>The brush belongs to a step that is not in the plan.</source>
        <translation>Der Pinsel gehört zu einem Schritt, der nicht im Plan ist.</translation>
    </message>
</context>
<context>
    <name>brush bar</name>
    <message>
        <source>Brush</source>
        <translation>Pinsel</translation>
    </message>
    <message>
        <source>paint with the left button</source>
        <translation>mit der linken Taste malen</translation>
    </message>
    <message>
        <source>Eraser</source>
        <translation>Radierer</translation>
    </message>
    <message>
        <source>gives back, takes away</source>
        <translation>gibt zurück, nimmt weg</translation>
    </message>
    <message>
        <source>Fill up to creases</source>
        <translation>Bis zu den Furchen füllen</translation>
    </message>
    <message>
        <source>click a place; with Shift it takes away</source>
        <translation>auf eine Stelle klicken; mit der Umschalttaste wird weggenommen</translation>
    </message>
    <message>
        <source>Line along a crease or line angle</source>
        <translation>Linie entlang einer Furche oder Kantenlinie</translation>
    </message>
    <message>
        <source>click where it starts and where it ends; with Shift it takes away</source>
        <translation>auf Anfang und Ende klicken; mit der Umschalttaste wird weggenommen</translation>
    </message>
    <message>
        <source>Grow the chosen area</source>
        <translation>Gewählte Fläche vergrößern</translation>
    </message>
    <message>
        <source>Shrink the chosen area</source>
        <translation>Gewählte Fläche verkleinern</translation>
    </message>
    <message>
        <source>Smooth the edge of the chosen area</source>
        <translation>Rand der gewählten Fläche glätten</translation>
    </message>
    <message>
        <source>Mirror mesial-distal...</source>
        <translation>Mesial-distal spiegeln...</translation>
    </message>
    <message>
        <source>Streaks...</source>
        <translation>Streifen...</translation>
    </message>
    <message>
        <source>Reset to the proposal...</source>
        <translation>Auf den Vorschlag zurücksetzen...</translation>
    </message>
    <message>
        <source>{name} in coats</source>
        <translation>{name} in Aufträgen</translation>
    </message>
    <message>
        <source>{name} in mm</source>
        <translation>{name} in mm</translation>
    </message>
    <message>
        <source>{value:g} coat</source>
        <translation>{value:g} A.</translation>
    </message>
    <message>
        <source>{value:g} coats</source>
        <translation>{value:g} A.</translation>
    </message>
    <message>
        <source>size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>soft edge</source>
        <translation>Rand</translation>
    </message>
    <message>
        <source>strength</source>
        <translation>Stärke</translation>
    </message>
    <message>
        <source>bend</source>
        <translation>Biegung</translation>
    </message>
    <message>
        <source>The fill stops where the surface bends more sharply than a circle of this radius</source>
        <translation>Das Füllen endet, wo sich die Oberfläche schärfer biegt als ein Kreis mit diesem Radius</translation>
    </message>
    <message>
        <source>grow by</source>
        <translation>Wachsen</translation>
    </message>
    <message>
        <source>How far Grow and Shrink move an edge, along the surface</source>
        <translation>Wie weit Vergrößern und Verkleinern einen Rand verschieben, entlang der Oberfläche</translation>
    </message>
</context>
<context>
    <name>case</name>
    <message>
        <source>A cement layer of {cement_thickness_mm} mm is out of range.</source>
        <translation>Eine Zementschicht von {cement_thickness_mm} mm liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0 to 1 mm.</source>
        <translation>Geben Sie 0 bis 1 mm an.</translation>
    </message>
    <message>
        <source>A screw channel has no place.</source>
        <translation>Ein Schraubenkanal hat keinen Ort.</translation>
    </message>
    <message>
        <source>Point at where it leaves.</source>
        <translation>Zeigen Sie, wo er austritt.</translation>
    </message>
    <message>
        <source>The axis of a screw channel points nowhere.</source>
        <translation>Die Achse eines Schraubenkanals zeigt nirgendwohin.</translation>
    </message>
    <message>
        <source>A screw channel of radius {radius_mm} mm is out of range.</source>
        <translation>Ein Schraubenkanal mit {radius_mm} mm Radius liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0.5 to 3 mm.</source>
        <translation>Geben Sie 0.5 bis 3 mm an.</translation>
    </message>
    <message>
        <source>Zones, accents and readings do not fit the surface.</source>
        <translation>Zonen, Akzente und Erkennung passen nicht zur Oberfläche.</translation>
    </message>
    <message>
        <source>A screw channel belongs to a unit that is not there.</source>
        <translation>Ein Schraubenkanal gehört zu einer Einheit, die nicht da ist.</translation>
    </message>
    <message>
        <source>A stump belongs to a unit that is not there.</source>
        <translation>Ein Stumpf gehört zu einer Einheit, die nicht da ist.</translation>
    </message>
    <message>
        <source>The case does not say what lies behind the crown.</source>
        <translation>Der Fall sagt nicht, was hinter der Krone liegt.</translation>
    </message>
    <message>
        <source>Choose a stump.</source>
        <translation>Wählen Sie einen Stumpf.</translation>
    </message>
</context>
<context>
    <name>case content</name>
    <message>
        <source>it unpacks to more than a case can hold</source>
        <translation>sie enthält ausgepackt mehr, als ein Fall fassen kann</translation>
    </message>
    <message>
        <source>It is an archive, but not a case.</source>
        <translation>Das ist ein Archiv, aber kein Fall.</translation>
    </message>
    <message>
        <source>Choose a file that ends in .stainmap.</source>
        <translation>Wählen Sie eine Datei, die auf .stainmap endet.</translation>
    </message>
    <message>
        <source>its description is far too long</source>
        <translation>ihre Beschreibung ist viel zu lang</translation>
    </message>
    <message>
        <source>the mesh in it is not the one it was saved with</source>
        <translation>das Netz darin ist nicht das, mit dem sie gespeichert wurde</translation>
    </message>
    <message>
        <source>a vertex is not a number</source>
        <translation>ein Punkt ist keine Zahl</translation>
    </message>
    <message>
        <source>its surface does not fit together</source>
        <translation>ihre Oberfläche passt nicht zusammen</translation>
    </message>
    <message>
        <source>a number of brushed coats is impossible</source>
        <translation>eine Zahl gepinselter Aufträge ist unmöglich</translation>
    </message>
    <message>
        <source>its list of {name} holds no shares</source>
        <translation>ihre Liste {name} enthält keine Anteile</translation>
    </message>
    <message>
        <source>its list of {name} has the wrong form</source>
        <translation>ihre Liste {name} hat die falsche Form</translation>
    </message>
    <message>
        <source>its list of {name} points beyond the surface</source>
        <translation>ihre Liste {name} zeigt über die Oberfläche hinaus</translation>
    </message>
    <message>
        <source>{name} is missing</source>
        <translation>{name} fehlt</translation>
    </message>
    <message>
        <source>The case is damaged: {what}.</source>
        <translation>Der Fall ist beschädigt: {what}.</translation>
    </message>
    <message>
        <source>Open an older copy of the case.</source>
        <translation>Öffnen Sie eine ältere Kopie des Falls.</translation>
    </message>
</context>
<context>
    <name>case document</name>
    <message>
        <source>The case description inside it is damaged.</source>
        <translation>Die Beschreibung des Falls darin ist beschädigt.</translation>
    </message>
    <message>
        <source>Open an older copy of the case.</source>
        <translation>Öffnen Sie eine ältere Kopie des Falls.</translation>
    </message>
    <message>
        <source>It is not a case.</source>
        <translation>Das ist kein Fall.</translation>
    </message>
    <message>
        <source>Choose a file that ends in .stainmap.</source>
        <translation>Wählen Sie eine Datei, die auf .stainmap endet.</translation>
    </message>
    <message>
        <source>A newer version wrote it (schema {schema}; this one reads up to {schema_2}).</source>
        <translation>Eine neuere Version hat ihn geschrieben (Schema {schema}; diese liest bis {schema_2}).</translation>
    </message>
    <message>
        <source>Update stainmap.</source>
        <translation>Aktualisieren Sie stainmap.</translation>
    </message>
    <message>
        <source>Its schema {schema} does not exist.</source>
        <translation>Sein Schema {schema} gibt es nicht.</translation>
    </message>
    <message>
        <source>The case description inside it does not fit ({error}).</source>
        <translation>Die Beschreibung des Falls darin passt nicht ({error}).</translation>
    </message>
</context>
<context>
    <name>case figures</name>
    <message>
        <source>{colour} on chalk; drops: {drops} {liquid}, {dyes}</source>
        <translation>{colour} auf Kreide; Tropfen: {drops} {liquid}, {dyes}</translation>
    </message>
    <message>
        <source>no dye; drops: {drops} {liquid}</source>
        <translation>kein Farbstoff; Tropfen: {drops} {liquid}</translation>
    </message>
    <message>
        <source>{kind}, {height:.1f} mm high, sintered size</source>
        <translation>{kind}, {height:.1f} mm hoch, Sintergröße</translation>
    </message>
    <message>
        <source>outer surface {area:.0f} mm², sintered</source>
        <translation>Außenfläche {area:.0f} mm², gesintert</translation>
    </message>
    <message>
        <source>fast, as on screen</source>
        <translation>schnell, wie am Bildschirm</translation>
    </message>
    <message>
        <source>all bands, as exported</source>
        <translation>alle Bänder, wie beim Export</translation>
    </message>
    <message>
        <source>textbook surfaces</source>
        <translation>Lehrbuchflächen</translation>
    </message>
    <message>
        <source>transport (reference)</source>
        <translation>Lichttransport (Referenz)</translation>
    </message>
    <message>
        <source>{name}: L* {lightness:.1f}, a* {a}, b* {b}, dE00 {off:.2f}</source>
        <translation>{name}: L* {lightness:.1f}, a* {a}, b* {b}, dE00 {off:.2f}</translation>
    </message>
    <message>
        <source>wall {wall_mm:.2f} mm, {region}; {light}, {degrees}°, without light from the sides</source>
        <translation>Wand {wall_mm:.2f} mm, {region}; {light}, {degrees}°, ohne seitliches Licht</translation>
    </message>
    <message>
        <source>no zone yet</source>
        <translation>noch keine Zone</translation>
    </message>
    <message>
        <source>{accent} on {zone}</source>
        <translation>{accent} auf {zone}</translation>
    </message>
    <message>
        <source>no coats</source>
        <translation>keine Aufträge</translation>
    </message>
    <message>
        <source>assumed wall {wall_mm:.2f} mm over {stump}</source>
        <translation>angenommene Wand {wall_mm:.2f} mm über {stump}</translation>
    </message>
    <message>
        <source>wall {wall_mm:.2f} mm over {stump}</source>
        <translation>Wand {wall_mm:.2f} mm über {stump}</translation>
    </message>
</context>
<context>
    <name>case file</name>
    <message>
        <source>reading the case</source>
        <translation>Fall wird gelesen</translation>
    </message>
    <message>
        <source>It is not an ordinary file.</source>
        <translation>Das ist keine gewöhnliche Datei.</translation>
    </message>
    <message>
        <source>There is no such file.</source>
        <translation>Diese Datei gibt es nicht.</translation>
    </message>
    <message>
        <source>Choose another.</source>
        <translation>Wählen Sie eine andere.</translation>
    </message>
    <message>
        <source>It is a folder.</source>
        <translation>Das ist ein Ordner.</translation>
    </message>
    <message>
        <source>Choose a file inside it.</source>
        <translation>Wählen Sie eine Datei darin.</translation>
    </message>
    <message>
        <source>You may not read it.</source>
        <translation>Sie dürfen sie nicht lesen.</translation>
    </message>
    <message>
        <source>Ask its owner.</source>
        <translation>Fragen Sie die Person, der sie gehört.</translation>
    </message>
    <message>
        <source>It is cut short or is not a case file.</source>
        <translation>Sie ist abgeschnitten oder keine Falldatei.</translation>
    </message>
    <message>
        <source>Open an older copy, or look for it among the recovered cases.</source>
        <translation>Öffnen Sie eine ältere Kopie, oder suchen Sie sie unter den wiederhergestellten Fällen.</translation>
    </message>
    <message>
        <source>It is damaged ({error}).</source>
        <translation>Sie ist beschädigt ({error}).</translation>
    </message>
    <message>
        <source>Open an older copy of the case.</source>
        <translation>Öffnen Sie eine ältere Kopie des Falls.</translation>
    </message>
</context>
<context>
    <name>case lock</name>
    <message>
        <source>{user} on {host}, process {process}, since {clock} on {day}</source>
        <translation>{user} auf {host}, Prozess {process}, seit {clock} am {day}</translation>
    </message>
    <message>
        <source>{host}, process {process}, since {clock} on {day}</source>
        <translation>{host}, Prozess {process}, seit {clock} am {day}</translation>
    </message>
</context>
<context>
    <name>case place</name>
    <message>
        <source>Save it under another name.</source>
        <translation>Speichern Sie ihn unter einem anderen Namen.</translation>
    </message>
    <message>
        <source>The file of this case is write-protected.</source>
        <translation>Die Datei dieses Falls ist schreibgeschützt.</translation>
    </message>
    <message>
        <source>The case has no file yet.</source>
        <translation>Der Fall hat noch keine Datei.</translation>
    </message>
    <message>
        <source>Choose where to save it.</source>
        <translation>Wählen Sie, wohin er gespeichert wird.</translation>
    </message>
    <message>
        <source>Something else has changed this file since it was opened here.</source>
        <translation>Etwas anderes hat diese Datei geändert, seit sie hier geöffnet wurde.</translation>
    </message>
    <message>
        <source>Save under another name, then compare the two.</source>
        <translation>Speichern Sie unter einem anderen Namen, dann vergleichen Sie beide.</translation>
    </message>
    <message>
        <source>Somebody else has this case open: {holder}.</source>
        <translation>Jemand anders hat diesen Fall offen: {holder}.</translation>
    </message>
    <message>
        <source>Somebody else has this case open.</source>
        <translation>Jemand anders hat diesen Fall offen.</translation>
    </message>
    <message>
        <source>The folder of this case cannot be written to.</source>
        <translation>In den Ordner dieses Falls kann nicht geschrieben werden.</translation>
    </message>
</context>
<context>
    <name>catalogue</name>
    <message>
        <source>It holds the ion &apos;{name}&apos;, which no catalogue describes.</source>
        <translation>Sie enthält das Ion „{name}“, das kein Verzeichnis beschreibt.</translation>
    </message>
    <message>
        <source>Its colour was measured over &apos;{backing}&apos;, which no catalogue describes.</source>
        <translation>Seine Farbe wurde über „{backing}“ gemessen, was kein Verzeichnis beschreibt.</translation>
    </message>
    <message>
        <source>This is not a materials file.</source>
        <translation>Das ist keine Materialdatei.</translation>
    </message>
    <message>
        <source>One starts with the line: format = &quot;{format_}&quot;.</source>
        <translation>Eine solche beginnt mit der Zeile: format = &quot;{format_}&quot;.</translation>
    </message>
    <message>
        <source>The materials file has version {version}.</source>
        <translation>Die Materialdatei hat Version {version}.</translation>
    </message>
    <message>
        <source>This program reads version {version}; a newer program may have written it.</source>
        <translation>Dieses Programm liest Version {version}; ein neueres Programm hat sie vielleicht geschrieben.</translation>
    </message>
    <message>
        <source>The materials file cannot be read ({value}).</source>
        <translation>Die Materialdatei kann nicht gelesen werden ({value}).</translation>
    </message>
    <message>
        <source>The file is too large for a materials file.</source>
        <translation>Die Datei ist zu groß für eine Materialdatei.</translation>
    </message>
    <message>
        <source>The file is not valid TOML: {error}.</source>
        <translation>Die Datei ist kein gültiges TOML: {error}.</translation>
    </message>
    <message>
        <source>Correct it with a text editor, or export the materials again.</source>
        <translation>Berichtigen Sie sie mit einem Texteditor, oder exportieren Sie die Materialien neu.</translation>
    </message>
</context>
<context>
    <name>catalogue tables</name>
    <message>
        <source>a number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <source>a whole number</source>
        <translation>eine ganze Zahl</translation>
    </message>
    <message>
        <source>text</source>
        <translation>Text</translation>
    </message>
    <message>
        <source>true or false</source>
        <translation>wahr oder falsch</translation>
    </message>
    <message>
        <source>a list</source>
        <translation>eine Liste</translation>
    </message>
    <message>
        <source>a table</source>
        <translation>eine Tabelle</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>There is no kind of material called &apos;{kind}&apos;.</source>
        <translation>Eine Materialart namens „{kind}“ gibt es nicht.</translation>
    </message>
    <message>
        <source>&apos;{kind}&apos; is not a list of tables.</source>
        <translation>„{kind}“ ist keine Liste von Tabellen.</translation>
    </message>
    <message>
        <source>Write [[{kind}]].</source>
        <translation>Schreiben Sie [[{kind}]].</translation>
    </message>
    <message>
        <source>The name is there twice; the first of them holds.</source>
        <translation>Der Name steht zweimal da; der erste gilt.</translation>
    </message>
    <message>
        <source>Give every entry its own name.</source>
        <translation>Geben Sie jedem Eintrag einen eigenen Namen.</translation>
    </message>
    <message>
        <source>Field &apos;{last}&apos; is not a finite number.</source>
        <translation>Das Feld „{last}“ ist keine endliche Zahl.</translation>
    </message>
    <message>
        <source>Field &apos;name&apos; is empty.</source>
        <translation>Das Feld „name“ ist leer.</translation>
    </message>
    <message>
        <source>There is no field &apos;{name}&apos;.</source>
        <translation>Ein Feld „{name}“ gibt es nicht.</translation>
    </message>
    <message>
        <source>Field &apos;{name}&apos; is missing in &apos;{where}&apos;.</source>
        <translation>Feld „{name}“ fehlt in „{where}“.</translation>
    </message>
    <message>
        <source>Field &apos;{name}&apos; is missing.</source>
        <translation>Feld „{name}“ fehlt.</translation>
    </message>
    <message>
        <source>Field &apos;{where}&apos; is {got} where {expected} belongs.</source>
        <translation>In Feld „{where}“ steht {got}, wo {expected} hingehört.</translation>
    </message>
    <message>
        <source>Field &apos;{where}&apos; cannot be {value}.</source>
        <translation>Feld „{where}“ kann nicht {value} sein.</translation>
    </message>
    <message>
        <source>Correct the entry.</source>
        <translation>Berichtigen Sie den Eintrag.</translation>
    </message>
    <message>
        <source>Did you mean &apos;{name}&apos;?</source>
        <translation>Meinten Sie „{name}“?</translation>
    </message>
    <message>
        <source>None is known.</source>
        <translation>Keines ist bekannt.</translation>
    </message>
    <message>
        <source>Known: {names}.</source>
        <translation>Bekannt: {names}.</translation>
    </message>
</context>
<context>
    <name>certainty</name>
    <message>
        <source>Tooth {number} is named a pontic, but has a cavity.</source>
        <translation>Zahn {number} ist als Brückenglied genannt, hat aber eine Höhlung.</translation>
    </message>
    <message>
        <source>Tooth {number} is named a retainer, but has no cavity.</source>
        <translation>Zahn {number} ist als Pfeiler genannt, hat aber keine Höhlung.</translation>
    </message>
</context>
<context>
    <name>coat block</name>
    <message>
        <source>Nothing was pasted.</source>
        <translation>Nichts wurde eingefügt.</translation>
    </message>
    <message>
        <source>What was copied is no block of coats.</source>
        <translation>Was kopiert wurde, ist kein Block von Aufträgen.</translation>
    </message>
    <message>
        <source>There is nothing to paste.</source>
        <translation>Es gibt nichts einzufügen.</translation>
    </message>
    <message>
        <source>Copy coats first.</source>
        <translation>Kopieren Sie zuerst Aufträge.</translation>
    </message>
    <message>
        <source>Over column {place} stands &apos;{cell}&apos;, no step.</source>
        <translation>Über Spalte {place} steht „{cell}“, kein Schritt.</translation>
    </message>
    <message>
        <source>&apos;{cell}&apos; is over column {place}, but the plan has {count} steps.</source>
        <translation>„{cell}“ steht über Spalte {place}, aber der Plan hat {count} Schritte.</translation>
    </message>
    <message>
        <source>&apos;{cell}&apos; is over column {place}, but step {number} is of {own} here.</source>
        <translation>„{cell}“ steht über Spalte {place}, aber Schritt {number} ist hier mit {own}.</translation>
    </message>
    <message>
        <source>Step {number} is named twice.</source>
        <translation>Schritt {number} ist zweimal genannt.</translation>
    </message>
    <message>
        <source>Below the heads there are no coats.</source>
        <translation>Unter den Köpfen stehen keine Aufträge.</translation>
    </message>
    <message>
        <source>&apos;{wrong}&apos; is no area of this crown.</source>
        <translation>„{wrong}“ ist keine Fläche dieser Krone.</translation>
    </message>
    <message>
        <source>&apos;{line}&apos; is no area of this crown.</source>
        <translation>„{line}“ ist keine Fläche dieser Krone.</translation>
    </message>
    <message>
        <source>A line has no area.</source>
        <translation>Eine Zeile hat keine Fläche.</translation>
    </message>
    <message>
        <source>&apos;{line}&apos; is named twice.</source>
        <translation>„{line}“ ist zweimal genannt.</translation>
    </message>
    <message>
        <source>Over a column of coats stands no step.</source>
        <translation>Über einer Spalte mit Aufträgen steht kein Schritt.</translation>
    </message>
    <message>
        <source>The block is {wide} steps wide; from step {step} on there is 1.</source>
        <translation>Der Block ist {wide} Schritte breit; ab Schritt {step} gibt es 1.</translation>
    </message>
    <message>
        <source>The block is {wide} steps wide; from step {step} on there are {left}.</source>
        <translation>Der Block ist {wide} Schritte breit; ab Schritt {step} gibt es {left}.</translation>
    </message>
    <message>
        <source>The block has {lines} lines; from &apos;{area}&apos; on there is one area.</source>
        <translation>Der Block hat {lines} Zeilen; ab „{area}“ gibt es eine Fläche.</translation>
    </message>
    <message>
        <source>The block has {lines} lines; from &apos;{area}&apos; on there are {below} areas.</source>
        <translation>Der Block hat {lines} Zeilen; ab „{area}“ gibt es {below} Flächen.</translation>
    </message>
    <message>
        <source> (line {number}, column {column} of what was copied)</source>
        <translation> (Zeile {number}, Spalte {column} des Kopierten)</translation>
    </message>
    <message>
        <source>&apos;{entry}&apos; for {where} is no whole number of coats; a span such as 2-3 says between.</source>
        <translation>„{entry}“ für {where} ist keine ganze Zahl von Aufträgen; eine Spanne wie 2-3 sagt dazwischen.</translation>
    </message>
    <message>
        <source>&apos;{entry}&apos; for {where} is no number of coats.</source>
        <translation>„{entry}“ für {where} ist keine Zahl von Aufträgen.</translation>
    </message>
</context>
<context>
    <name>coat entry</name>
    <message>
        <source>clear {count} cells</source>
        <translation>{count} Zellen leeren</translation>
    </message>
    <message>
        <source>{coats} coats in {count} cells</source>
        <translation>{coats} Aufträge in {count} Zellen</translation>
    </message>
    <message>
        <source>a coat more in {count} cells</source>
        <translation>ein Auftrag mehr in {count} Zellen</translation>
    </message>
    <message>
        <source>a coat fewer in {count} cells</source>
        <translation>ein Auftrag weniger in {count} Zellen</translation>
    </message>
    <message>
        <source>There are no coats of their own to lock here.</source>
        <translation>Hier sind keine eigenen Aufträge zum Sperren.</translation>
    </message>
    <message>
        <source>No cell of the coat table is chosen.</source>
        <translation>Keine Zelle der Auftragstabelle ist gewählt.</translation>
    </message>
    <message>
        <source>Copied the coats of one cell.</source>
        <translation>Die Aufträge einer Zelle wurden kopiert.</translation>
    </message>
    <message>
        <source>Copied {count} cells.</source>
        <translation>{count} Zellen wurden kopiert.</translation>
    </message>
    <message>
        <source>cut {count} cells</source>
        <translation>{count} Zellen ausschneiden</translation>
    </message>
    <message>
        <source>paste into {count} cells</source>
        <translation>in {count} Zellen einfügen</translation>
    </message>
</context>
<context>
    <name>coat headers</name>
    <message>
        <source>Steps in painting order</source>
        <translation>Schritte in der Reihenfolge des Auftragens</translation>
    </message>
    <message>
        <source>Areas</source>
        <translation>Flächen</translation>
    </message>
</context>
<context>
    <name>coat limits</name>
    <message>
        <source>base</source>
        <translation>Basis</translation>
    </message>
    <message>
        <source>what lowers value</source>
        <translation>was die Helligkeit senkt</translation>
    </message>
    <message>
        <source>dark accent</source>
        <translation>dunkler Akzent</translation>
    </message>
    <message>
        <source>bright accent</source>
        <translation>heller Akzent</translation>
    </message>
    <message>
        <source>no coats of {uses}</source>
        <translation>keine Aufträge ({uses})</translation>
    </message>
    <message>
        <source>at most {most} coat of {uses} together</source>
        <translation>höchstens {most} Auftrag zusammen ({uses})</translation>
    </message>
    <message>
        <source>at most {most} coats of {uses} together</source>
        <translation>höchstens {most} Aufträge zusammen ({uses})</translation>
    </message>
    <message>
        <source>at most {most} coat of {uses}</source>
        <translation>höchstens {most} Auftrag ({uses})</translation>
    </message>
    <message>
        <source>at most {most} coats of {uses}</source>
        <translation>höchstens {most} Aufträge ({uses})</translation>
    </message>
    <message>
        <source>{area}: {coats:g} coats, {limit}.</source>
        <translation>{area}: {coats:g} Aufträge, {limit}.</translation>
    </message>
</context>
<context>
    <name>coat model</name>
    <message>
        <source>outer surface</source>
        <translation>Außenfläche</translation>
    </message>
    <message>
        <source>on top of it</source>
        <translation>obenauf</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>innen</translation>
    </message>
    <message>
        <source>step {step}, jar {number} {liquid}</source>
        <translation>Schritt {step}, Napf {number} {liquid}</translation>
    </message>
    <message>
        <source>{area}, step {step} {liquid}</source>
        <translation>{area}, Schritt {step} {liquid}</translation>
    </message>
    <message>
        <source>{span} coat</source>
        <translation>{span} Auftrag</translation>
    </message>
    <message>
        <source>{span} coats</source>
        <translation>{span} Aufträge</translation>
    </message>
    <message>
        <source>{coats} on {inherited} inherited from the zone below</source>
        <translation>{coats} zu {inherited} von der Zone darunter</translation>
    </message>
    <message>
        <source>{inherited} inherited from the zone below</source>
        <translation>{inherited} von der Zone darunter</translation>
    </message>
    <message>
        <source>no coats</source>
        <translation>keine Aufträge</translation>
    </message>
    <message>
        <source>brushed by hand too</source>
        <translation>auch von Hand gepinselt</translation>
    </message>
    <message>
        <source>locked</source>
        <translation>gesperrt</translation>
    </message>
    <message>
        <source>Step {step}, jar {number} {liquid}</source>
        <translation>Schritt {step}, Napf {number} {liquid}</translation>
    </message>
    <message>
        <source>Drag it to paint it earlier or later, or press Ctrl+Shift with Left or Right.</source>
        <translation>Ziehen Sie ihn, um ihn früher oder später aufzutragen, oder drücken Sie Strg+Umschalt mit Links oder Rechts.</translation>
    </message>
</context>
<context>
    <name>coat table</name>
    <message>
        <source>No steps yet.

+ step adds one of a liquid.</source>
        <translation>Noch keine Schritte.

+ Schritt fügt einen mit einer Flüssigkeit hinzu.</translation>
    </message>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>No steps yet.

+ step adds one of a liquid; Suggest coats looks for a whole plan.</source>
        <translation>Noch keine Schritte.

+ Schritt fügt einen mit einer Flüssigkeit an; „Aufträge vorschlagen“ sucht einen ganzen Plan.</translation>
    </message>
    <message>
        <source>Coats by area and step</source>
        <translation>Aufträge nach Fläche und Schritt</translation>
    </message>
</context>
<context>
    <name>colour</name>
    <message>
        <source>L*a*b* {lightness} {a} {b} is not a surface colour.</source>
        <translation>L*a*b* {lightness} {a} {b} ist keine Oberflächenfarbe.</translation>
    </message>
    <message>
        <source>L* runs from 0 to 100, a* and b* from -128 to 128.</source>
        <translation>L* reicht von 0 bis 100, a* und b* von -128 bis 128.</translation>
    </message>
</context>
<context>
    <name>colour conversion</name>
    <message>
        <source>Choose the conversion &apos;{name}&apos;, or give a reading in {other}.</source>
        <translation>Wählen Sie die Umrechnung „{name}“, oder geben Sie eine Messung in {other} an.</translation>
    </message>
    <message>
        <source>Read the colour over the same backing, or say that it is wanted in place.</source>
        <translation>Messen Sie die Farbe über demselben Untergrund, oder sagen Sie, dass sie im Mund gewünscht ist.</translation>
    </message>
    <message>
        <source>Predict for {light} and {degrees} degrees, or give a reading for {other}.</source>
        <translation>Lassen Sie für {light} und {degrees} Grad vorhersagen, oder geben Sie eine Messung für {other} an.</translation>
    </message>
    <message>
        <source>Give a reading in {other}; there is no conversion for this.</source>
        <translation>Geben Sie eine Messung in {other} an; dafür gibt es keine Umrechnung.</translation>
    </message>
    <message>
        <source>The two colours differ in {what}: {one} against {other}.</source>
        <translation>Die beiden Farben unterscheiden sich in {what}: {one} gegen {other}.</translation>
    </message>
    <message>
        <source>The colour reflects less than the first surface of polished zirconia does.</source>
        <translation>Die Farbe reflektiert weniger als die erste Oberfläche von poliertem Zirkonoxid.</translation>
    </message>
    <message>
        <source>Check its geometry; it cannot have been measured with the gloss.</source>
        <translation>Prüfen Sie ihre Geometrie; sie kann nicht mit Glanz gemessen sein.</translation>
    </message>
</context>
<context>
    <name>compare</name>
    <message>
        <source>The same plan in {name}</source>
        <translation>Derselbe Plan in {name}</translation>
    </message>
    <message>
        <source>The bare block</source>
        <translation>Der ungefärbte Rohling</translation>
    </message>
    <message>
        <source>predicting the other plan</source>
        <translation>der andere Plan wird vorhergesagt</translation>
    </message>
    <message>
        <source>This case is of another mesh, so that the two plans cannot stand side by side.</source>
        <translation>Dieser Fall gehört zu einem anderen Netz, darum können die beiden Pläne nicht nebeneinander stehen.</translation>
    </message>
    <message>
        <source>Choose a case that was made from the same file.</source>
        <translation>Wählen Sie einen Fall, der aus derselben Datei gemacht wurde.</translation>
    </message>
    <message>
        <source>What is shown beside the plan is not painted on.</source>
        <translation>Was neben dem Plan gezeigt wird, wird nicht bemalt.</translation>
    </message>
</context>
<context>
    <name>compare before</name>
    <message>
        <source>Nothing has been predicted yet.</source>
        <translation>Noch ist nichts vorhergesagt.</translation>
    </message>
    <message>
        <source>Being worked out; what you see is as it is now.</source>
        <translation>Wird ausgerechnet; zu sehen ist, wie es jetzt ist.</translation>
    </message>
    <message>
        <source>Let the key go to see it as it is now.</source>
        <translation>Lassen Sie die Taste los, um zu sehen, wie es jetzt ist.</translation>
    </message>
    <message>
        <source>Esc, or the entry of the menu View once more, ends it.</source>
        <translation>Esc oder noch einmal der Eintrag im Menü Ansicht beendet es.</translation>
    </message>
    <message>
        <source>The step changed the surface itself: what was before it cannot be shown here.</source>
        <translation>Der Schritt hat die Oberfläche selbst verändert: Was vorher war, kann hier nicht gezeigt werden.</translation>
    </message>
    <message>
        <source>What is shown instead</source>
        <translation>Was stattdessen gezeigt wird</translation>
    </message>
    <message>
        <source>The bare block, without any stain</source>
        <translation>Der Rohling, ohne jede Färbung</translation>
    </message>
    <message>
        <source>The bare block: there is no step before this one</source>
        <translation>Der ungefärbte Rohling: Vor diesem gibt es keinen Schritt</translation>
    </message>
    <message>
        <source>Before the last step: {label}</source>
        <translation>Vor dem letzten Schritt: {label}</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
</context>
<context>
    <name>compare desk</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>Stopped.</source>
        <translation>Angehalten.</translation>
    </message>
    <message>
        <source>A &amp;step of the history</source>
        <translation>Ein &amp;Schritt der Chronik</translation>
    </message>
    <message>
        <source>A s&amp;uggested plan</source>
        <translation>Ein &amp;vorgeschlagener Plan</translation>
    </message>
    <message>
        <source>Another f&amp;urnace programme</source>
        <translation>Ein anderes Sinter&amp;programm</translation>
    </message>
    <message>
        <source>The &amp;bare block</source>
        <translation>Der ungefär&amp;bte Rohling</translation>
    </message>
    <message>
        <source>Another &amp;case file...</source>
        <translation>Eine andere &amp;Falldatei...</translation>
    </message>
    <message>
        <source>&amp;Search for plans</source>
        <translation>Pläne s&amp;uchen</translation>
    </message>
    <message>
        <source>{at}  as it was opened</source>
        <translation>{at}  wie geöffnet</translation>
    </message>
    <message>
        <source>Before the step: {label}</source>
        <translation>Vor dem Schritt: {label}</translation>
    </message>
    <message>
        <source>As it was opened</source>
        <translation>Wie geöffnet</translation>
    </message>
    <message>
        <source>After step {at}: {label}</source>
        <translation>Nach Schritt {at}: {label}</translation>
    </message>
    <message>
        <source>Suggested plan: {title}</source>
        <translation>Vorgeschlagener Plan: {title}</translation>
    </message>
    <message>
        <source>Another case of the same crown</source>
        <translation>Ein anderer Fall derselben Krone</translation>
    </message>
    <message>
        <source>Cases (*{suffix})</source>
        <translation>Fälle (*{suffix})</translation>
    </message>
    <message>
        <source>Case {name}</source>
        <translation>Fall {name}</translation>
    </message>
    <message>
        <source>Reading the case</source>
        <translation>Fall wird gelesen</translation>
    </message>
    <message>
        <source>Suggesting coats</source>
        <translation>Aufträge werden vorgeschlagen</translation>
    </message>
    <message>
        <source>Predicting the other plan</source>
        <translation>Der andere Plan wird vorhergesagt</translation>
    </message>
    <message>
        <source>take the plan beside it ({title})</source>
        <translation>den Plan daneben übernehmen ({title})</translation>
    </message>
</context>
<context>
    <name>compare tables</name>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>left | right</source>
        <translation>links | rechts</translation>
    </message>
    <message>
        <source>L* left</source>
        <translation>L* links</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>C* left</source>
        <translation>C* links</translation>
    </message>
    <message>
        <source>from wanted</source>
        <translation>vom Ziel</translation>
    </message>
    <message>
        <source>Not calibrated: each colour is a direction, not a match.</source>
        <translation>Nicht kalibriert: Jede Farbe ist eine Richtung, keine Übereinstimmung.</translation>
    </message>
    <message>
        <source>What a programme does to scattering is assumed by its class until a blank coupon has been read.</source>
        <translation>Was ein Programm mit der Streuung macht, wird nach seiner Klasse angenommen, bis ein ungefärbtes Plättchen gemessen ist.</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>{label}, left and right in colour</source>
        <translation>{label}, links und rechts als Farbe</translation>
    </message>
    <message>
        <source>coats, rounds of painting</source>
        <translation>Aufträge, Runden</translation>
    </message>
    <message>
        <source>jars</source>
        <translation>Näpfe</translation>
    </message>
    <message>
        <source>mixing and painting</source>
        <translation>Mischen und Auftragen</translation>
    </message>
    <message>
        <source>programme</source>
        <translation>Programm</translation>
    </message>
    <message>
        <source>time, cold to opening</source>
        <translation>Zeit, kalt bis zum Öffnen</translation>
    </message>
    <message>
        <source>class by time</source>
        <translation>Klasse nach Zeit</translation>
    </message>
    <message>
        <source>TP of a bare plate of 1.0 mm</source>
        <translation>TP einer ungefärbten Platte von 1.0 mm</translation>
    </message>
    <message>
        <source>coats: {label}</source>
        <translation>Aufträge: {label}</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
</context>
<context>
    <name>compare ways</name>
    <message>
        <source>History</source>
        <translation>Chronik</translation>
    </message>
</context>
<context>
    <name>compare window</name>
    <message>
        <source>The plan as it is</source>
        <translation>Der Plan, wie er ist</translation>
    </message>
    <message>
        <source>Compare</source>
        <translation>Vergleichen</translation>
    </message>
    <message>
        <source>Beside the plan</source>
        <translation>Neben dem Plan</translation>
    </message>
    <message>
        <source>What stands beside the plan</source>
        <translation>Was neben dem Plan steht</translation>
    </message>
    <message>
        <source>Look of both crowns</source>
        <translation>Ansicht beider Kronen</translation>
    </message>
    <message>
        <source>Light on both crowns</source>
        <translation>Licht auf beiden Kronen</translation>
    </message>
    <message>
        <source>Shading</source>
        <translation>Schattierung</translation>
    </message>
    <message>
        <source>Whole crown</source>
        <translation>Ganze Krone</translation>
    </message>
    <message>
        <source>Take the plan at the right</source>
        <translation>Rechten Plan übernehmen</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Ansicht</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Licht</translation>
    </message>
    <message>
        <source>Differences</source>
        <translation>Unterschiede</translation>
    </message>
    <message>
        <source>Compare: {title}</source>
        <translation>Vergleich: {title}</translation>
    </message>
    <message>
        <source>coats: {coats}, jars: {jars}, mixing and painting: {minutes:.0f} min</source>
        <translation>Aufträge: {coats}, Näpfe: {jars}, Mischen und Auftragen: {minutes:.0f} min</translation>
    </message>
</context>
<context>
    <name>connecting</name>
    <message>
        <source>It may not be written.</source>
        <translation>Es darf nicht geschrieben werden.</translation>
    </message>
    <message>
        <source>Look at the rights of file and folder.</source>
        <translation>Prüfen Sie die Rechte von Datei und Ordner.</translation>
    </message>
    <message>
        <source>It may not be opened.</source>
        <translation>Es darf nicht geöffnet werden.</translation>
    </message>
    <message>
        <source>It cannot be opened.</source>
        <translation>Es kann nicht geöffnet werden.</translation>
    </message>
    <message>
        <source>Look whether file and folder are there.</source>
        <translation>Sehen Sie nach, ob Datei und Ordner da sind.</translation>
    </message>
    <message>
        <source>The disk is full.</source>
        <translation>Der Datenträger ist voll.</translation>
    </message>
    <message>
        <source>Free some space and do it again.</source>
        <translation>Schaffen Sie Platz, und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>The disk does not read or write it.</source>
        <translation>Der Datenträger liest oder schreibt es nicht.</translation>
    </message>
    <message>
        <source>Look after the disk.</source>
        <translation>Prüfen Sie den Datenträger.</translation>
    </message>
    <message>
        <source>The lab book is damaged.</source>
        <translation>Das Laborbuch ist beschädigt.</translation>
    </message>
    <message>
        <source>Start the program again: it keeps the damaged file aside.</source>
        <translation>Starten Sie das Programm neu: Die beschädigte Datei wird daneben aufbewahrt.</translation>
    </message>
    <message>
        <source>Another program has been writing into the lab book all the time.</source>
        <translation>Ein anderes Programm hat die ganze Zeit ins Laborbuch geschrieben.</translation>
    </message>
    <message>
        <source>Close it, then do this again.</source>
        <translation>Schließen Sie es, dann versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>The lab book cannot be used ({error}).</source>
        <translation>Das Laborbuch kann nicht benutzt werden ({error}).</translation>
    </message>
    <message>
        <source>Start the program again.</source>
        <translation>Starten Sie das Programm neu.</translation>
    </message>
</context>
<context>
    <name>corrections</name>
    <message>
        <source>the reading is right</source>
        <translation>die Erkennung stimmt</translation>
    </message>
    <message>
        <source>Connectors</source>
        <translation>Verbinder</translation>
    </message>
    <message>
        <source>Section of the connector {name}, mm²:</source>
        <translation>Querschnitt des Verbinders {name}, mm²:</translation>
    </message>
    <message>
        <source>set the sections of the connectors</source>
        <translation>die Querschnitte der Verbinder setzen</translation>
    </message>
    <message>
        <source>Wall</source>
        <translation>Wand</translation>
    </message>
    <message>
        <source>There is no inner surface. Wall to assume, mm:</source>
        <translation>Es gibt keine Innenfläche. Anzunehmende Wand, mm:</translation>
    </message>
    <message>
        <source>assume a wall of {wall_mm:g} mm</source>
        <translation>eine Wand von {wall_mm:g} mm annehmen</translation>
    </message>
</context>
<context>
    <name>coupon dialog</name>
    <message>
        <source>Blank coupon, programme {programme}</source>
        <translation>Ungefärbtes Plättchen, Programm {programme}</translation>
    </message>
    <message>
        <source>An unstained coupon of the block, sintered in this programme, replaces the assumed effect of the programme by a measured one.</source>
        <translation>Ein ungefärbtes Plättchen des Rohlings, in diesem Programm gesintert, ersetzt die angenommene Wirkung des Programms durch eine gemessene.</translation>
    </message>
    <message>
        <source>use a measured factor</source>
        <translation>gemessenen Faktor verwenden</translation>
    </message>
    <message>
        <source>Factor on scattering</source>
        <translation>Faktor auf die Streuung</translation>
    </message>
    <message>
        <source>Factor ({scattering_factor:g} assumed)</source>
        <translation>Faktor ({scattering_factor:g} angenommen)</translation>
    </message>
    <message>
        <source>Read by</source>
        <translation>Gemessen von</translation>
    </message>
    <message>
        <source>Read on</source>
        <translation>Gemessen am</translation>
    </message>
    <message>
        <source>work it out from one reading, 45/0, D65, 2°</source>
        <translation>aus einer Messung ausrechnen, 45/0, D65, 2°</translation>
    </message>
    <message>
        <source>Coupon {axis}</source>
        <translation>Plättchen {axis}</translation>
    </message>
    <message>
        <source>Coupon lies on</source>
        <translation>Plättchen liegt auf</translation>
    </message>
    <message>
        <source>Lies on</source>
        <translation>Liegt auf</translation>
    </message>
    <message>
        <source>Coupon thickness</source>
        <translation>Dicke des Plättchens</translation>
    </message>
    <message>
        <source>Thickness, mm sintered</source>
        <translation>Dicke, mm gesintert</translation>
    </message>
    <message>
        <source>joined by gel or cement</source>
        <translation>mit Gel oder Zement verbunden</translation>
    </message>
    <message>
        <source>Work the factor out</source>
        <translation>Faktor ausrechnen</translation>
    </message>
    <message>
        <source>Scattering {scattering_factor:.2f} times that of the slow programme; dE00 {remaining_de00:.1f} remains.</source>
        <translation>Streuung {scattering_factor:.2f}-mal so groß wie im langsamen Programm; dE00 {remaining_de00:.1f} bleibt.</translation>
    </message>
</context>
<context>
    <name>crown bridge</name>
    <message>
        <source>The bridge {map} cannot be made.</source>
        <translation>Die Brücke {map} kann nicht gemacht werden.</translation>
    </message>
    <message>
        <source>Choose one of {known}.</source>
        <translation>Wählen Sie eine von {known}.</translation>
    </message>
    <message>
        <source>carving the surfaces</source>
        <translation>die Flächen werden geformt</translation>
    </message>
    <message>
        <source>meshing {number}</source>
        <translation>{number} wird vernetzt</translation>
    </message>
    <message>
        <source>joining the units</source>
        <translation>die Einheiten werden verbunden</translation>
    </message>
    <message>
        <source>noting zones and sections</source>
        <translation>Zonen und Querschnitte werden vermerkt</translation>
    </message>
    <message>
        <source>These units cannot be joined.</source>
        <translation>Diese Einheiten können nicht verbunden werden.</translation>
    </message>
    <message>
        <source>Choose another seed.</source>
        <translation>Wählen Sie einen anderen Startwert.</translation>
    </message>
</context>
<context>
    <name>crown cards</name>
    <message>
        <source>{area}, {coats}, L* {lightness:.1f} ± {plus_minus:.1f}, C* {chroma:.1f}, h {hue_degrees:.0f} degrees, {wall}</source>
        <translation>{area}, {coats}, L* {lightness:.1f} ± {plus_minus:.1f}, C* {chroma:.1f}, h {hue_degrees:.0f} Grad, {wall}</translation>
    </message>
    <message>
        <source>Reading under the pointer</source>
        <translation>Werte unter dem Zeiger</translation>
    </message>
    <message>
        <source>Legend of zones</source>
        <translation>Legende der Zonen</translation>
    </message>
    <message>
        <source>zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>on top, dashed</source>
        <translation>obenauf, gestrichelt</translation>
    </message>
    <message>
        <source>Legend of coats</source>
        <translation>Legende der Aufträge</translation>
    </message>
    <message>
        <source>{title}, 0 to {most} coats</source>
        <translation>{title}, 0 bis {most} Aufträge</translation>
    </message>
</context>
<context>
    <name>crown desk</name>
    <message>
        <source>{does}, moves the margin</source>
        <translation>{does}, verschiebt den Kronenrand</translation>
    </message>
    <message>
        <source>step {step}, {liquid}</source>
        <translation>Schritt {step}, {liquid}</translation>
    </message>
    <message>
        <source>all steps together</source>
        <translation>alle Schritte zusammen</translation>
    </message>
</context>
<context>
    <name>crown maker</name>
    <message>
        <source>carving the surface</source>
        <translation>die Fläche wird geformt</translation>
    </message>
    <message>
        <source>meshing the outer surface</source>
        <translation>die Außenfläche wird vernetzt</translation>
    </message>
    <message>
        <source>meshing the cavity</source>
        <translation>die Höhlung wird vernetzt</translation>
    </message>
    <message>
        <source>noting zones and walls</source>
        <translation>Zonen und Wände werden vermerkt</translation>
    </message>
    <message>
        <source>&quot;{teeth}&quot; is not a tooth number.</source>
        <translation>„{teeth}“ ist keine Zahnnummer.</translation>
    </message>
    <message>
        <source>Give two digits by ISO 3950 as in 46, or a bridge as in 14-15-16.</source>
        <translation>Geben Sie zwei Ziffern nach ISO 3950 an, etwa 46, oder eine Brücke wie 14-15-16.</translation>
    </message>
</context>
<context>
    <name>crown overlay</name>
    <message>
        <source>Marks on the crown</source>
        <translation>Marken auf der Krone</translation>
    </message>
    <message>
        <source>No crown is open</source>
        <translation>Keine Krone ist offen</translation>
    </message>
    <message>
        <source>A crown is being read</source>
        <translation>Eine Krone wird gelesen</translation>
    </message>
</context>
<context>
    <name>crown questions</name>
    <message>
        <source>Click the connector, where it is narrowest. The right button turns the crown.</source>
        <translation>Klicken Sie auf den Verbinder, wo er am schmalsten ist. Die rechte Taste dreht die Krone.</translation>
    </message>
    <message>
        <source>Click connector {number} of {count}, where it is narrowest. The right button turns the crown.</source>
        <translation>Klicken Sie auf Verbinder {number} von {count}, wo er am schmalsten ist. Die rechte Taste dreht die Krone.</translation>
    </message>
    <message>
        <source>Where do the units part?</source>
        <translation>Wo trennen sich die Einheiten?</translation>
    </message>
    <message>
        <source>Where is its outer side?</source>
        <translation>Wo ist ihre Außenseite?</translation>
    </message>
    <message>
        <source>That is its biting side.</source>
        <translation>Das ist ihre Kauseite.</translation>
    </message>
    <message>
        <source>place the screw channel</source>
        <translation>den Schraubenkanal setzen</translation>
    </message>
</context>
<context>
    <name>crown shaders</name>
    <message>
        <source>The graphics driver refuses a shader: {why}</source>
        <translation>Der Grafiktreiber lehnt einen Shader ab: {why}</translation>
    </message>
    <message>
        <source>Start with STAINMAP_NO_GL=1 to draw without the graphics driver.</source>
        <translation>Starten Sie mit STAINMAP_NO_GL=1, um ohne den Grafiktreiber zu zeichnen.</translation>
    </message>
</context>
<context>
    <name>crown solids</name>
    <message>
        <source>Tooth {number} cannot be made.</source>
        <translation>Zahn {number} kann nicht gemacht werden.</translation>
    </message>
    <message>
        <source>Choose one of {map}.</source>
        <translation>Wählen Sie einen von {map}.</translation>
    </message>
</context>
<context>
    <name>crown stage</name>
    <message>
        <source>Crown</source>
        <translation>Krone</translation>
    </message>
    <message>
        <source>a mesh that has not been read yet</source>
        <translation>ein Netz, das noch nicht gelesen ist</translation>
    </message>
    <message>
        <source>Crown, not read yet</source>
        <translation>Krone, noch nicht gelesen</translation>
    </message>
    <message>
        <source>Crown, {look}</source>
        <translation>Krone, {look}</translation>
    </message>
</context>
<context>
    <name>crown view</name>
    <message>
        <source>sintered</source>
        <translation>gesintert</translation>
    </message>
</context>
<context>
    <name>cut tool</name>
    <message>
        <source>Cut off the crown</source>
        <translation>Krone abschneiden</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Tilt</source>
        <translation>Kippung</translation>
    </message>
    <message>
        <source>Lean</source>
        <translation>Neigung</translation>
    </message>
    <message>
        <source>close the cut with a flat base</source>
        <translation>Schnitt mit flachem Boden schließen</translation>
    </message>
    <message>
        <source>One step of undo. The file in the case stays whole.</source>
        <translation>Ein Schritt zum Rückgängigmachen. Die Datei im Fall bleibt ganz.</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Cut</source>
        <translation>Schneiden</translation>
    </message>
    <message>
        <source>{name} of the plane</source>
        <translation>{name} der Ebene</translation>
    </message>
    <message>
        <source>{name} of the plane, number</source>
        <translation>{name} der Ebene, Zahl</translation>
    </message>
    <message>
        <source>Plane of the cut</source>
        <translation>Schnittebene</translation>
    </message>
    <message>
        <source>Lay the plane through the neck; what lies below it is cut away.</source>
        <translation>Legen Sie die Ebene durch den Zahnhals; was darunter liegt, wird abgeschnitten.</translation>
    </message>
    <message>
        <source>Click the crown that is meant: only that is kept.</source>
        <translation>Klicken Sie auf die gemeinte Krone: Nur sie bleibt.</translation>
    </message>
</context>
<context>
    <name>days</name>
    <message>
        <source>The days of repeats ({value}) do not fit.</source>
        <translation>Die Tage der Wiederholungen ({value}) passen nicht.</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>Give one to {most_repeats} whole numbers from 1 to {most_days} that rise, as 1, 7, 30.</source>
        <translation>Geben Sie eine bis {most_repeats} ganze Zahlen von 1 bis {most_days} an, die steigen, etwa 1, 7, 30.</translation>
    </message>
</context>
<context>
    <name>display check</name>
    <message>
        <source>Crowns are shown about as light as they are predicted.</source>
        <translation>Kronen werden etwa so hell gezeigt, wie sie vorhergesagt sind.</translation>
    </message>
    <message>
        <source>Crowns are shown about {error:.0f} L* lighter than they are predicted.</source>
        <translation>Kronen werden etwa {error:.0f} L* heller gezeigt, als sie vorhergesagt sind.</translation>
    </message>
    <message>
        <source>Crowns are shown about {error:.0f} L* darker than they are predicted.</source>
        <translation>Kronen werden etwa {error:.0f} L* dunkler gezeigt, als sie vorhergesagt sind.</translation>
    </message>
    <message>
        <source>Grooves keep their dark tones.</source>
        <translation>Furchen behalten ihre dunklen Töne.</translation>
    </message>
    <message>
        <source>Dark tones run together: grooves look deeper than they are.</source>
        <translation>Dunkle Töne laufen zusammen: Furchen sehen tiefer aus, als sie sind.</translation>
    </message>
    <message>
        <source>Not even a step of 2 L* is seen: decide by the figures alone.</source>
        <translation>Nicht einmal ein Unterschied von 2 L* ist zu sehen: Entscheiden Sie allein nach den Zahlen.</translation>
    </message>
    <message>
        <source>A step of {step:g} L* is seen.</source>
        <translation>Ein Unterschied von {step:g} L* ist zu sehen.</translation>
    </message>
    <message>
        <source>display judged on {day}: good enough to look at</source>
        <translation>Bildschirm am {day} beurteilt: gut genug zum Ansehen</translation>
    </message>
    <message>
        <source>display judged on {day}: decide by the figures</source>
        <translation>Bildschirm am {day} beurteilt: nach den Zahlen entscheiden</translation>
    </message>
</context>
<context>
    <name>display check dialog</name>
    <message>
        <source>this display has not been judged yet</source>
        <translation>dieser Bildschirm ist noch nicht beurteilt</translation>
    </message>
    <message>
        <source>Lines around a grey</source>
        <translation>Linien um ein Grau</translation>
    </message>
    <message>
        <source>Dark squares on black</source>
        <translation>Dunkle Quadrate auf Schwarz</translation>
    </message>
    <message>
        <source>Slightly lighter squares on a tooth colour</source>
        <translation>Etwas hellere Quadrate auf einer Zahnfarbe</translation>
    </message>
    <message>
        <source>Check the display</source>
        <translation>Bildschirm prüfen</translation>
    </message>
    <message>
        <source>Sit as you work, let the display warm up, turn off night colours. Whether its white is right no eye can tell: set it to D65 (6500 K).</source>
        <translation>Sitzen Sie wie bei der Arbeit, lassen Sie den Bildschirm warm werden, schalten Sie Nachtfarben aus. Ob sein Weiß stimmt, sieht kein Auge: Stellen Sie es auf D65 (6500 K).</translation>
    </message>
    <message>
        <source>Grey in the middle</source>
        <translation>Grau in der Mitte</translation>
    </message>
    <message>
        <source>Dark squares seen</source>
        <translation>Gesehene dunkle Quadrate</translation>
    </message>
    <message>
        <source>Lighter squares seen</source>
        <translation>Gesehene hellere Quadrate</translation>
    </message>
    <message>
        <source>1  Screw up your eyes: move the slider until the grey vanishes in the lines.</source>
        <translation>1  Augen zusammenkneifen: Regler schieben, bis das Grau in den Linien verschwindet.</translation>
    </message>
    <message>
        <source>2  How many squares stand out from the black?</source>
        <translation>2  Wie viele Quadrate heben sich vom Schwarz ab?</translation>
    </message>
    <message>
        <source>3  How many squares are lighter than the tooth colour around them?</source>
        <translation>3  Wie viele Quadrate sind heller als die Zahnfarbe um sie?</translation>
    </message>
    <message>
        <source>What follows</source>
        <translation>Was daraus folgt</translation>
    </message>
</context>
<context>
    <name>draft</name>
    <message>
        <source>Draft: {area_mm2:.1f} mm² of wall are thinner than {thin_wall_mm:.1f} mm (thinnest {thinnest_mm:.2f} mm), and nobody has said what lies behind them. Choose the stump.</source>
        <translation>Entwurf: {area_mm2:.1f} mm² Wand sind dünner als {thin_wall_mm:.1f} mm (dünnste Stelle {thinnest_mm:.2f} mm), und es ist nicht angegeben, was dahinter liegt. Wählen Sie den Stumpf.</translation>
    </message>
</context>
<context>
    <name>edits</name>
    <message>
        <source>A step cannot move beyond the ends of the plan.</source>
        <translation>Ein Schritt kann nicht über die Enden des Plans hinaus.</translation>
    </message>
    <message>
        <source>A height of {height_mm} mm in the blank is out of range.</source>
        <translation>Eine Höhe von {height_mm} mm im Rohling liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0 to {max_nesting_mm:g} mm.</source>
        <translation>Geben Sie 0 bis {max_nesting_mm:g} mm an.</translation>
    </message>
    <message>
        <source>Nothing of its own lies behind the region &apos;{region}&apos;.</source>
        <translation>Hinter dem Bereich „{region}“ liegt nichts Eigenes.</translation>
    </message>
    <message>
        <source>Choose what lies behind it first.</source>
        <translation>Wählen Sie zuerst, was dahinter liegt.</translation>
    </message>
    <message>
        <source>Something must lie behind the crown.</source>
        <translation>Etwas muss hinter der Krone liegen.</translation>
    </message>
    <message>
        <source>Choose another stump.</source>
        <translation>Wählen Sie einen anderen Stumpf.</translation>
    </message>
    <message>
        <source>A wall of {wall_mm} mm is out of range.</source>
        <translation>Eine Wand von {wall_mm} mm liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0.3 to 4 mm.</source>
        <translation>Geben Sie 0.3 bis 4 mm an.</translation>
    </message>
    <message>
        <source>There is no step {step} in the plan.</source>
        <translation>Einen Schritt {step} gibt es im Plan nicht.</translation>
    </message>
</context>
<context>
    <name>exercise crown</name>
    <message>
        <source>reading the crown</source>
        <translation>die Krone wird gelesen</translation>
    </message>
    <message>
        <source>Its surface is not closed.</source>
        <translation>Ihre Oberfläche ist nicht geschlossen.</translation>
    </message>
    <message>
        <source>Its {label} zone has only {size:.1f} mm2.</source>
        <translation>Ihre Zone {label} hat nur {size:.1f} mm2.</translation>
    </message>
    <message>
        <source>It has no inner surface.</source>
        <translation>Sie hat keine Innenfläche.</translation>
    </message>
    <message>
        <source>Seed {seed} gives a crown of tooth {name} that nothing can be asked of. {why}</source>
        <translation>Startwert {seed} ergibt eine Krone von Zahn {name}, zu der nichts gefragt werden kann. {why}</translation>
    </message>
    <message>
        <source>Take another seed.</source>
        <translation>Nehmen Sie einen anderen Startwert.</translation>
    </message>
</context>
<context>
    <name>exercise task</name>
    <message>
        <source>The crown of this exercise was changed or another one opened.</source>
        <translation>Die Krone dieser Übung wurde geändert oder eine andere geöffnet.</translation>
    </message>
    <message>
        <source>Undo what was done to the crown itself, then hand in.</source>
        <translation>Machen Sie rückgängig, was an der Krone selbst getan wurde, dann geben Sie ab.</translation>
    </message>
    <message>
        <source>&apos;{title}&apos; is done with patches, not on a crown.</source>
        <translation>„{title}“ wird an Feldern gemacht, nicht an einer Krone.</translation>
    </message>
</context>
<context>
    <name>exporting</name>
    <message>
        <source>PLY mesh, sRGB colours and areas</source>
        <translation>PLY-Netz, sRGB-Farben und Flächen</translation>
    </message>
    <message>
        <source>GLB mesh, linear colours and areas</source>
        <translation>GLB-Netz, lineare Farben und Flächen</translation>
    </message>
    <message>
        <source>3MF mesh, sRGB colours and areas</source>
        <translation>3MF-Netz, sRGB-Farben und Flächen</translation>
    </message>
    <message>
        <source>Table of vertices</source>
        <translation>Tabelle der Punkte</translation>
    </message>
    <message>
        <source>Plan and prediction, for other programs</source>
        <translation>Plan und Vorhersage, für andere Programme</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Bild</translation>
    </message>
    <message>
        <source>STL has no place for colours.</source>
        <translation>STL hat keinen Platz für Farben.</translation>
    </message>
    <message>
        <source>Use one of {endings}.</source>
        <translation>Nehmen Sie eine von {endings}.</translation>
    </message>
    <message>
        <source>&apos;{ending}&apos; is no ending that stainmap writes.</source>
        <translation>„{ending}“ ist keine Endung, die stainmap schreibt.</translation>
    </message>
</context>
<context>
    <name>film</name>
    <message>
        <source>The plan paints nothing yet, so there is nothing to show coat by coat.</source>
        <translation>Der Plan färbt noch nichts, darum gibt es nichts Auftrag für Auftrag zu zeigen.</translation>
    </message>
    <message>
        <source>Put coats into the table first.</source>
        <translation>Setzen Sie zuerst Aufträge in die Tabelle.</translation>
    </message>
    <message>
        <source>coat {done} of {count}</source>
        <translation>Auftrag {done} von {count}</translation>
    </message>
    <message>
        <source>brushed by hand</source>
        <translation>von Hand gepinselt</translation>
    </message>
    <message>
        <source>Predicted: a direction, not a match; a planning aid.</source>
        <translation>Vorhergesagt: eine Richtung, keine Übereinstimmung; eine Planungshilfe.</translation>
    </message>
    <message>
        <source>Invented materials: do not fire by them. A planning aid.</source>
        <translation>Erfundene Materialien: Nicht danach arbeiten. Eine Planungshilfe.</translation>
    </message>
    <message>
        <source>picture {number} of {all}</source>
        <translation>Bild {number} von {all}</translation>
    </message>
    <message>
        <source>A film is not written as &apos;{suffix}&apos;.</source>
        <translation>Ein Film wird nicht als „{suffix}“ geschrieben.</translation>
    </message>
    <message>
        <source>Choose one of {kinds}.</source>
        <translation>Wählen Sie eines von {kinds}.</translation>
    </message>
    <message>
        <source>A picture of this name is there already, and none is written over.</source>
        <translation>Ein Bild dieses Namens ist schon da, und keines wird überschrieben.</translation>
    </message>
    <message>
        <source>Choose another name.</source>
        <translation>Wählen Sie einen anderen Namen.</translation>
    </message>
</context>
<context>
    <name>film card</name>
    <message>
        <source>Coat that is shown</source>
        <translation>Gezeigter Auftrag</translation>
    </message>
    <message>
        <source>Film of the plan</source>
        <translation>Film des Plans</translation>
    </message>
    <message>
        <source>play</source>
        <translation>abspielen</translation>
    </message>
    <message>
        <source>Play the film</source>
        <translation>Film abspielen</translation>
    </message>
    <message>
        <source>back</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>One coat back</source>
        <translation>Einen Auftrag zurück</translation>
    </message>
    <message>
        <source>on</source>
        <translation>weiter</translation>
    </message>
    <message>
        <source>One coat on</source>
        <translation>Einen Auftrag weiter</translation>
    </message>
    <message>
        <source>slower</source>
        <translation>langsamer</translation>
    </message>
    <message>
        <source>Play slower</source>
        <translation>Langsamer abspielen</translation>
    </message>
    <message>
        <source>faster</source>
        <translation>schneller</translation>
    </message>
    <message>
        <source>Play faster</source>
        <translation>Schneller abspielen</translation>
    </message>
    <message>
        <source>save...</source>
        <translation>speichern...</translation>
    </message>
    <message>
        <source>Save the film as pictures</source>
        <translation>Film als Bilder speichern</translation>
    </message>
    <message>
        <source>close</source>
        <translation>schließen</translation>
    </message>
    <message>
        <source>Close the film</source>
        <translation>Film schließen</translation>
    </message>
    <message>
        <source>pause</source>
        <translation>anhalten</translation>
    </message>
    <message>
        <source>Pause the film</source>
        <translation>Film anhalten</translation>
    </message>
    <message>
        <source>{name} (space bar on the crown)</source>
        <translation>{name} (Leertaste auf der Krone)</translation>
    </message>
</context>
<context>
    <name>film desk</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>The plan is another one now, so the film is over.</source>
        <translation>Der Plan ist jetzt ein anderer, darum ist der Film vorbei.</translation>
    </message>
    <message>
        <source>The plan, coat after coat</source>
        <translation>Der Plan, Auftrag für Auftrag</translation>
    </message>
    <message>
        <source>Making the film</source>
        <translation>Film wird gemacht</translation>
    </message>
    <message>
        <source>Save the film</source>
        <translation>Film speichern</translation>
    </message>
    <message>
        <source>Saved the film as {path}.</source>
        <translation>Film als {path} gespeichert.</translation>
    </message>
    <message>
        <source>Saved {count} pictures, the first as {path}.</source>
        <translation>{count} Bilder gespeichert, das erste als {path}.</translation>
    </message>
    <message>
        <source>Saving the film</source>
        <translation>Film wird gespeichert</translation>
    </message>
</context>
<context>
    <name>film words</name>
    <message>
        <source>The bare block, as it would be sintered without stain</source>
        <translation>Der Rohling, wie er ohne Färbung gesintert wäre</translation>
    </message>
    <message>
        <source>coat {coat} of {coats}</source>
        <translation>Auftrag {coat} von {coats}</translation>
    </message>
    <message>
        <source>Step {step}, {coats}: {liquid} from jar {jar}</source>
        <translation>Schritt {step}, {coats}: {liquid} aus Napf {jar}</translation>
    </message>
    <message>
        <source>one coat follows</source>
        <translation>ein Auftrag folgt</translation>
    </message>
    <message>
        <source>{count} coats follow</source>
        <translation>{count} Aufträge folgen</translation>
    </message>
    <message>
        <source>In the order they are painted, {coats}.</source>
        <translation>In der Reihenfolge des Auftragens: {coats}.</translation>
    </message>
    <message>
        <source>On {areas}: {size:.0f} {square} sintered, {microlitres:.1f} µL, {drops:.2f} drops.</source>
        <translation>Auf {areas}: {size:.0f} {square} gesintert, {microlitres:.1f} µL, {drops:.2f} Tropfen.</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>It lies on nothing, so it changes nothing.</source>
        <translation>Er liegt auf nichts und ändert darum nichts.</translation>
    </message>
    <message>
        <source>Where it is painted {change}.</source>
        <translation>Wo er liegt: {change}.</translation>
    </message>
    <message>
        <source>There is no body zone</source>
        <translation>Es gibt keine Körperzone</translation>
    </message>
    <message>
        <source>Body L* {lightness:.1f}, C* {chroma:.1f}</source>
        <translation>Körper L* {lightness:.1f}, C* {chroma:.1f}</translation>
    </message>
</context>
<context>
    <name>finishing</name>
    <message>
        <source>Grinding by {depth_mm} mm is out of range.</source>
        <translation>Beschleifen um {depth_mm} mm liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give more than 0 and at most {deepest_grinding_mm} mm.</source>
        <translation>Geben Sie mehr als 0 und höchstens {deepest_grinding_mm} mm an.</translation>
    </message>
    <message>
        <source>An area is ground twice.</source>
        <translation>Eine Fläche wird zweimal beschliffen.</translation>
    </message>
    <message>
        <source>Give each area one depth.</source>
        <translation>Geben Sie jeder Fläche eine Tiefe.</translation>
    </message>
</context>
<context>
    <name>flat desk</name>
    <message>
        <source>being laid flat</source>
        <translation>wird flach gelegt</translation>
    </message>
    <message>
        <source>here once the crown has been read</source>
        <translation>hier, sobald die Krone gelesen ist</translation>
    </message>
    <message>
        <source>Laying the crown flat</source>
        <translation>Krone wird flach gelegt</translation>
    </message>
    <message>
        <source>ruled: drawn more than twice, or less than half, its size</source>
        <translation>liniert: mehr als doppelt oder weniger als halb so groß gezeichnet</translation>
    </message>
    <message>
        <source>{front} and {back}</source>
        <translation>{front} und {back}</translation>
    </message>
</context>
<context>
    <name>flat pane</name>
    <message>
        <source>Flat view {text}</source>
        <translation>Flache Ansicht {text}</translation>
    </message>
    <message>
        <source>Flat views</source>
        <translation>Flache Ansichten</translation>
    </message>
    <message>
        <source>{word} ({letter} on the flat views)</source>
        <translation>{word} ({letter} auf den flachen Ansichten)</translation>
    </message>
    <message>
        <source>Unit {number}</source>
        <translation>Einheit {number}</translation>
    </message>
    <message>
        <source>Unit {number} (Page up, Page down on the flat views)</source>
        <translation>Einheit {number} (Bild auf, Bild ab auf den flachen Ansichten)</translation>
    </message>
    <message>
        <source>below</source>
        <translation>unten</translation>
    </message>
    <message>
        <source>beside</source>
        <translation>daneben</translation>
    </message>
    <message>
        <source>Flat views below the crown</source>
        <translation>Flache Ansichten unter der Krone</translation>
    </message>
    <message>
        <source>Flat views beside the crown</source>
        <translation>Flache Ansichten neben der Krone</translation>
    </message>
</context>
<context>
    <name>flat view</name>
    <message>
        <source>Flat view, {caption}</source>
        <translation>Flache Ansicht, {caption}</translation>
    </message>
    <message>
        <source>Drawing a flat view</source>
        <translation>Flache Ansicht wird gezeichnet</translation>
    </message>
</context>
<context>
    <name>flat views</name>
    <message>
        <source>The outer surface of {number} cannot be laid flat: {error}.</source>
        <translation>Die Außenfläche von {number} kann nicht flach gelegt werden: {error}.</translation>
    </message>
    <message>
        <source>Look whether the margin runs where it should; the other views still work.</source>
        <translation>Sehen Sie nach, ob der Kronenrand verläuft, wo er soll; die anderen Ansichten gehen weiterhin.</translation>
    </message>
</context>
<context>
    <name>gl canvas</name>
    <message>
        <source>Crown picture</source>
        <translation>Bild der Krone</translation>
    </message>
</context>
<context>
    <name>grey steps</name>
    <message>
        <source>A lightness of {lightness:g} cannot be tested on a screen.</source>
        <translation>Eine Helligkeit von {lightness:g} kann auf einem Bildschirm nicht geprüft werden.</translation>
    </message>
    <message>
        <source>Choose one from {darkest:.0f} to {lightest:.0f}.</source>
        <translation>Wählen Sie eine von {darkest:.0f} bis {lightest:.0f}.</translation>
    </message>
    <message>
        <source>A screen of 8 bits a colour shows no difference below {step:.2f} L* near L* {lightness:.0f}; whoever sees that one nearly always may see finer ones than can be shown here.</source>
        <translation>Ein Bildschirm mit 8 Bit je Farbe zeigt keinen Unterschied unter {step:.2f} L* nahe L* {lightness:.0f}; wer diesen fast immer sieht, sieht vielleicht feinere, als hier gezeigt werden können.</translation>
    </message>
</context>
<context>
    <name>guided</name>
    <message>
        <source>Open a crown</source>
        <translation>Krone öffnen</translation>
    </message>
    <message>
        <source>Open a mesh of your own and answer what the card asks, or keep the crown that is open.</source>
        <translation>Öffnen Sie ein eigenes Netz und beantworten Sie, was die Karte fragt, oder behalten Sie die offene Krone.</translation>
    </message>
    <message>
        <source>Say the tooth</source>
        <translation>Zahn angeben</translation>
    </message>
    <message>
        <source>Open Tooth and roles in the menu Crown, look whether the number is right, and close it.</source>
        <translation>Öffnen Sie „Zahn und Rollen“ im Menü Krone, sehen Sie nach, ob die Nummer stimmt, und schließen Sie es.</translation>
    </message>
    <message>
        <source>Correct a zone</source>
        <translation>Zone berichtigen</translation>
    </message>
    <message>
        <source>Choose the name of a zone in the table and paint with the left button where it should reach, or let the zones be proposed again (menu Crown).</source>
        <translation>Wählen Sie den Namen einer Zone in der Tabelle und malen Sie mit der linken Taste, wohin sie reichen soll, oder lassen Sie die Zonen neu vorschlagen (Menü Krone).</translation>
    </message>
    <message>
        <source>Choose the block, and put a coat on</source>
        <translation>Rohling und Auftrag</translation>
    </message>
    <message>
        <source>The block stands at the top. In the table choose a cell and type a number; a step with its jar is added by the button above it.</source>
        <translation>Der Rohling steht oben. Wählen Sie in der Tabelle eine Zelle und tippen Sie eine Zahl; einen Schritt mit seinem Napf fügt der Knopf darüber hinzu.</translation>
    </message>
    <message>
        <source>Look at the outcome</source>
        <translation>Ergebnis ansehen</translation>
    </message>
    <message>
        <source>Predicted stands beside wanted. Click an area to turn the crown to it, and point at the crown to read a place.</source>
        <translation>Die Vorhersage steht neben dem Ziel. Klicken Sie auf eine Fläche, um die Krone zu ihr zu drehen, und zeigen Sie auf die Krone, um eine Stelle abzulesen.</translation>
    </message>
    <message>
        <source>Look at the sheets</source>
        <translation>Blätter ansehen</translation>
    </message>
    <message>
        <source>Open the preview: coat map, mixing list and the page for the dentist. Print them, or close it again.</source>
        <translation>Öffnen Sie die Vorschau: Auftragsplan, Mischliste und die Seite für die Praxis. Drucken Sie sie, oder schließen Sie sie wieder.</translation>
    </message>
    <message>
        <source>That was a whole plan</source>
        <translation>Das war ein ganzer Plan</translation>
    </message>
    <message>
        <source>Save the case to keep it. The manual (F1) has a page for each part of the window.</source>
        <translation>Speichern Sie den Fall, um ihn zu behalten. Das Handbuch (F1) hat zu jedem Teil des Fensters eine Seite.</translation>
    </message>
</context>
<context>
    <name>guided card</name>
    <message>
        <source>Guided first plan</source>
        <translation>Geführter erster Plan</translation>
    </message>
    <message>
        <source>keep this crown</source>
        <translation>diese behalten</translation>
    </message>
    <message>
        <source>Work with the crown that is open</source>
        <translation>Mit der offenen Krone arbeiten</translation>
    </message>
    <message>
        <source>back</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>One step back</source>
        <translation>Einen Schritt zurück</translation>
    </message>
    <message>
        <source>skip</source>
        <translation>überspringen</translation>
    </message>
    <message>
        <source>Skip this step</source>
        <translation>Diesen Schritt überspringen</translation>
    </message>
    <message>
        <source>end</source>
        <translation>beenden</translation>
    </message>
    <message>
        <source>End the guided first plan</source>
        <translation>Den geführten ersten Plan beenden</translation>
    </message>
    <message>
        <source>step {at} of {count}</source>
        <translation>Schritt {at} von {count}</translation>
    </message>
    <message>
        <source>close</source>
        <translation>schließen</translation>
    </message>
    <message>
        <source>Ring about what is meant</source>
        <translation>Ring um das Gemeinte</translation>
    </message>
</context>
<context>
    <name>help</name>
    <message>
        <source>&lt;p&gt;&lt;b&gt;Stain liquids are acidic solutions of metal salts.&lt;/b&gt; Gloves, goggles, and air
that is drawn away; keep to their safety data sheets. No liquid goes back into its bottle.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Ceramic dust&lt;/b&gt; from milling and from cleaning is drawn off and not breathed in.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Ovens and fresh work are hot.&lt;/b&gt; Crowns dry before they are sintered; wet ones crack.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Thin walls break.&lt;/b&gt; Keep to the smallest wall the maker of the block allows.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;What is shown is a prediction&lt;/b&gt; with a stated uncertainty: a direction, not a match. The
materials that come with the program are invented, for demonstration: do not fire by them. The
makers&apos; instructions for use, local rules and licensed practice decide.&lt;/p&gt;</source>
        <translation>&lt;p&gt;&lt;b&gt;Färbeflüssigkeiten sind saure Lösungen von Metallsalzen.&lt;/b&gt; Handschuhe, Schutzbrille und
abgesaugte Luft; beachten Sie die Sicherheitsdatenblätter. Keine Flüssigkeit kommt in ihre Flasche zurück.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Keramikstaub&lt;/b&gt; vom Fräsen und Reinigen wird abgesaugt und nicht eingeatmet.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Öfen und frische Arbeiten sind heiß.&lt;/b&gt; Kronen trocknen, bevor sie gesintert werden; nasse reißen.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Dünne Wände brechen.&lt;/b&gt; Halten Sie die Mindestwandstärke ein, die der Hersteller des Rohlings angibt.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Gezeigt wird eine Vorhersage&lt;/b&gt; mit angegebener Unsicherheit: eine Richtung, keine Übereinstimmung. Die
Materialien, die mit dem Programm kommen, sind erfunden, zur Vorführung: Arbeiten Sie nicht danach. Es
entscheiden die Gebrauchsanweisungen der Hersteller, örtliche Vorschriften und die zugelassene Praxis.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>&lt;table cellpadding=&quot;3&quot;&gt;
&lt;tr&gt;&lt;td&gt;turn&lt;/td&gt;&lt;td&gt;right drag, arrow keys&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;shift&lt;/td&gt;&lt;td&gt;middle drag, Shift and right drag, Shift and arrow keys&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;zoom at the pointer&lt;/td&gt;&lt;td&gt;wheel; plus and minus&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;whole crown&lt;/td&gt;&lt;td&gt;Home, Ctrl+0&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;occlusal, buccal, lingual, mesial, distal, inner&lt;/td&gt;&lt;td&gt;Ctrl+1 to Ctrl+6;
O B L M D I on the crown&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;flat views; which of them; which unit&lt;/td&gt;&lt;td&gt;Ctrl+F; W (rosette) O B L M D, A for
all; Page up, Page down, on the flat views&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;check the place under the pointer; section there; all lights&lt;/td&gt;
&lt;td&gt;Ctrl+K; Ctrl+J; Ctrl+L&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;in the row: value alone&lt;/td&gt;&lt;td&gt;V on the crown&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;before the last step; the bare block&lt;/td&gt;&lt;td&gt;H, Shift+H held on the crown&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;compare plans; history; film of the plan&lt;/td&gt;&lt;td&gt;Ctrl+D; Ctrl+H; Ctrl+M&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;looks&lt;/td&gt;&lt;td&gt;Alt and the number on the bar&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;paint&lt;/td&gt;&lt;td&gt;left drag; Esc takes the stroke back; with Alt, or with
Crown, Brush moves the margin, a zone goes over the margin and takes it along&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;back from a question, a message, a reading&lt;/td&gt;&lt;td&gt;Esc&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;brush, eraser&lt;/td&gt;&lt;td&gt;P, E; [ and ] change the size&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;fill up to creases, line along a crease&lt;/td&gt;&lt;td&gt;F, C; click or Return on the crown,
Shift takes away, left drag turns, Esc goes back&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;chosen area: grow, shrink, smooth its edge&lt;/td&gt;&lt;td&gt;G, Shift+G, S&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;mirror mesial-distal, streaks, reset to the proposal&lt;/td&gt;&lt;td&gt;X, T, R&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;coats&lt;/td&gt;&lt;td&gt;digits in the table, 2-3 for a span, plus, minus, Delete; L locks a cell
&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;range of coats; copy, paste; move a step&lt;/td&gt;&lt;td&gt;Shift and arrows; Ctrl+C, Ctrl+V;
Ctrl+Shift with Left, Right, or drag its head&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;suggest coats; intake; tray, its sheets&lt;/td&gt;&lt;td&gt;Ctrl+G; Ctrl+I; Ctrl+T, Ctrl+P
&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;next part of the window, part before&lt;/td&gt;&lt;td&gt;F6, Shift+F6&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;settings; manual, at the page for what has the keyboard; this list&lt;/td&gt;
&lt;td&gt;Ctrl+comma; F1; Ctrl+F1&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;paint an area instead of a step&lt;/td&gt;&lt;td&gt;choose its name (Left from the first step)&lt;/td&gt;&lt;/tr&gt;
&lt;/table&gt;</source>
        <translation>&lt;table cellpadding=&quot;3&quot;&gt;
&lt;tr&gt;&lt;td&gt;drehen&lt;/td&gt;&lt;td&gt;rechts ziehen, Pfeiltasten&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;verschieben&lt;/td&gt;&lt;td&gt;Mitte ziehen, Umschalt und rechts ziehen, Umschalt und Pfeiltasten&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;am Zeiger vergrößern&lt;/td&gt;&lt;td&gt;Rad; Plus und Minus&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;ganze Krone&lt;/td&gt;&lt;td&gt;Pos1, Strg+0&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;okklusal, bukkal, lingual, mesial, distal, innen&lt;/td&gt;&lt;td&gt;Strg+1 bis Strg+6;
O B L M D I auf der Krone&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;flache Ansichten; welche davon; welche Einheit&lt;/td&gt;&lt;td&gt;Strg+F; W (Rosette) O B L M D, A für
alle; Bild auf, Bild ab, auf den flachen Ansichten&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Stelle unter dem Zeiger prüfen; Schnitt dort; alle Lichtarten&lt;/td&gt;
&lt;td&gt;Strg+K; Strg+J; Strg+L&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;in der Reihe: nur Helligkeit&lt;/td&gt;&lt;td&gt;V auf der Krone&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;vor dem letzten Schritt; der ungefärbte Rohling&lt;/td&gt;&lt;td&gt;H, Umschalt+H auf der Krone gehalten&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Pläne vergleichen; Chronik; Film des Plans&lt;/td&gt;&lt;td&gt;Strg+D; Strg+H; Strg+M&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Ansichten&lt;/td&gt;&lt;td&gt;Alt und die Zahl auf der Leiste&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;malen&lt;/td&gt;&lt;td&gt;links ziehen; Esc nimmt den Strich zurück; mit Alt oder mit
Krone, Pinsel verschiebt den Kronenrand, geht eine Zone über den Rand und nimmt ihn mit&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;zurück von einer Frage, einer Meldung, einem Lesen&lt;/td&gt;&lt;td&gt;Esc&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Pinsel, Radierer&lt;/td&gt;&lt;td&gt;P, E; [ und ] ändern die Größe&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;bis zu den Furchen füllen, Linie entlang einer Furche&lt;/td&gt;&lt;td&gt;F, C; Klick oder Eingabe auf der Krone,
Umschalt nimmt weg, links ziehen dreht, Esc geht zurück&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;gewählte Fläche: vergrößern, verkleinern, Rand glätten&lt;/td&gt;&lt;td&gt;G, Umschalt+G, S&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;mesial-distal spiegeln, Streifen, auf den Vorschlag zurücksetzen&lt;/td&gt;&lt;td&gt;X, T, R&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Aufträge&lt;/td&gt;&lt;td&gt;Ziffern in der Tabelle, 2-3 für eine Spanne, Plus, Minus, Entf; L sperrt eine Zelle
&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Bereich von Aufträgen; kopieren, einfügen; einen Schritt verschieben&lt;/td&gt;&lt;td&gt;Umschalt und Pfeile; Strg+C, Strg+V;
Strg+Umschalt mit Links, Rechts, oder am Kopf ziehen&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Aufträge vorschlagen; Fallaufnahme; Tablett, seine Blätter&lt;/td&gt;&lt;td&gt;Strg+G; Strg+I; Strg+T, Strg+P
&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;nächster Teil des Fensters, Teil davor&lt;/td&gt;&lt;td&gt;F6, Umschalt+F6&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Einstellungen; Handbuch, auf der Seite zu dem, was die Tastatur hat; diese Liste&lt;/td&gt;
&lt;td&gt;Strg+Komma; F1; Strg+F1&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;eine Fläche statt eines Schritts malen&lt;/td&gt;&lt;td&gt;ihren Namen wählen (Links vom ersten Schritt)&lt;/td&gt;&lt;/tr&gt;
&lt;/table&gt;</translation>
    </message>
    <message>
        <source>no key</source>
        <translation>keine Taste</translation>
    </message>
    <message>
        <source>Changed in the settings</source>
        <translation>In den Einstellungen geändert</translation>
    </message>
    <message>
        <source>Keys and mouse</source>
        <translation>Tasten und Maus</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Warnhinweise</translation>
    </message>
    <message>
        <source>&lt;p&gt;Plans the staining of milled zirconia crowns and bridges before they are sintered.&lt;/p&gt;&lt;p&gt;A planning aid with stated uncertainty; not a shade guarantee and not medical advice.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Plant das Färben gefräster Zirkonoxidkronen und -brücken vor dem Sintern.&lt;/p&gt;&lt;p&gt;Eine Planungshilfe mit angegebener Unsicherheit; keine Gewähr für eine Zahnfarbe und kein ärztlicher Rat.&lt;/p&gt;</translation>
    </message>
</context>
<context>
    <name>history desk</name>
    <message>
        <source>as it was opened</source>
        <translation>wie geöffnet</translation>
    </message>
    <message>
        <source>no step yet</source>
        <translation>noch kein Schritt</translation>
    </message>
    <message>
        <source>1 step</source>
        <translation>1 Schritt</translation>
    </message>
    <message>
        <source>{steps} steps</source>
        <translation>{steps} Schritte</translation>
    </message>
    <message>
        <source>{words}, {undone} undone</source>
        <translation>{words}, {undone} zurückgenommen</translation>
    </message>
    <message>
        <source>Small pictures</source>
        <translation>Kleine Bilder</translation>
    </message>
</context>
<context>
    <name>history list</name>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>undone</source>
        <translation>zurückgenommen</translation>
    </message>
    <message>
        <source>Step {number}, {label}, where the case stands now</source>
        <translation>Schritt {number}, {label}, hier steht der Fall</translation>
    </message>
    <message>
        <source>Step {number}, {label}, undone</source>
        <translation>Schritt {number}, {label}, zurückgenommen</translation>
    </message>
    <message>
        <source>Step {number}, {label}</source>
        <translation>Schritt {number}, {label}</translation>
    </message>
    <message>
        <source>Steps of the history</source>
        <translation>Schritte der Chronik</translation>
    </message>
    <message>
        <source>History</source>
        <translation>Chronik</translation>
    </message>
    <message>
        <source>Kept until the case is closed; the file holds the last state.</source>
        <translation>Wird bis zum Schließen des Falls behalten; die Datei enthält den letzten Stand.</translation>
    </message>
</context>
<context>
    <name>intake</name>
    <message>
        <source>The shades of this computer cannot be changed while their file is damaged.</source>
        <translation>Die Farben dieses Rechners können nicht geändert werden, solange ihre Datei beschädigt ist.</translation>
    </message>
    <message>
        <source>Correct it, or take it away.</source>
        <translation>Berichtigen Sie sie, oder nehmen Sie sie weg.</translation>
    </message>
    <message>
        <source>The doubt of a shade is out of range.</source>
        <translation>Die Unsicherheit einer Farbe liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0 to {largest_doubt:g} for each of L*, a* and b*.</source>
        <translation>Geben Sie 0 bis {largest_doubt:g} für L*, a* und b* an.</translation>
    </message>
    <message>
        <source>A tab has no designation.</source>
        <translation>Ein Farbmuster hat keine Bezeichnung.</translation>
    </message>
    <message>
        <source>Choose one, such as A2.</source>
        <translation>Wählen Sie eine, etwa A2.</translation>
    </message>
    <message>
        <source>A third has two shades.</source>
        <translation>Ein Drittel hat zwei Farben.</translation>
    </message>
    <message>
        <source>Keep one of them.</source>
        <translation>Behalten Sie eine davon.</translation>
    </message>
    <message>
        <source>{count} neighbours were given.</source>
        <translation>{count} Nachbarn wurden angegeben.</translation>
    </message>
    <message>
        <source>Give up to two.</source>
        <translation>Geben Sie bis zu zwei an.</translation>
    </message>
    <message>
        <source>Neighbour {teeth} was given twice.</source>
        <translation>Nachbar {teeth} wurde zweimal angegeben.</translation>
    </message>
    <message>
        <source>Change its number.</source>
        <translation>Ändern Sie seine Nummer.</translation>
    </message>
    <message>
        <source>The wish is {count} characters long.</source>
        <translation>Der Wunsch ist {count} Zeichen lang.</translation>
    </message>
    <message>
        <source>Say it in up to {most_wish_characters}; longer notes fit into the case.</source>
        <translation>Sagen Sie ihn in bis zu {most_wish_characters}; längere Notizen passen in den Fall.</translation>
    </message>
</context>
<context>
    <name>intake desk</name>
    <message>
        <source>front teeth</source>
        <translation>Frontzähne</translation>
    </message>
    <message>
        <source>premolars</source>
        <translation>Prämolaren</translation>
    </message>
    <message>
        <source>molars</source>
        <translation>Molaren</translation>
    </message>
    <message>
        <source>{problem} The shipped shades are used.</source>
        <translation>{problem} Die mitgelieferten Farben werden verwendet.</translation>
    </message>
    <message>
        <source>fill in the intake page</source>
        <translation>die Fallaufnahme ausfüllen</translation>
    </message>
    <message>
        <source>set what is wanted</source>
        <translation>das Ziel setzen</translation>
    </message>
    <message>
        <source>bridge of {count} units, {first} to {last}</source>
        <translation>Brücke aus {count} Einheiten, {first} bis {last}</translation>
    </message>
    <message>
        <source>{code}, {teeth}. Nothing here is required; leave out what is not known.</source>
        <translation>{code}, {teeth}. Nichts hier ist Pflicht; lassen Sie weg, was nicht bekannt ist.</translation>
    </message>
    <message>
        <source>The table of tabs was changed on this computer.</source>
        <translation>Die Tabelle der Farbmuster wurde an diesem Rechner geändert.</translation>
    </message>
    <message>
        <source>Kept as the usual offsets of {class_words}.</source>
        <translation>Als übliche Abstände für {class_words} behalten.</translation>
    </message>
</context>
<context>
    <name>intake dialog</name>
    <message>
        <source>not known yet</source>
        <translation>noch nicht bekannt</translation>
    </message>
    <message>
        <source>a prepared tooth</source>
        <translation>einem präparierten Zahn</translation>
    </message>
    <message>
        <source>a base on an implant</source>
        <translation>einer Basis auf einem Implantat</translation>
    </message>
    <message>
        <source>The middle third is what the body is held to. A third that is not read follows it: the gradient from neck to edge comes from the offsets.</source>
        <translation>Am mittleren Drittel wird der Körper gemessen. Ein nicht abgelesenes Drittel folgt ihm: Der Verlauf vom Hals zur Schneide kommt aus den Abständen.</translation>
    </message>
    <message>
        <source>Intake</source>
        <translation>Fallaufnahme</translation>
    </message>
    <message>
        <source>Wanted shade, by thirds</source>
        <translation>Gewünschte Farbe, nach Dritteln</translation>
    </message>
    <message>
        <source>from a photograph...</source>
        <translation>aus einem Foto...</translation>
    </message>
    <message>
        <source>table of tabs...</source>
        <translation>Tabelle der Farbmuster...</translation>
    </message>
    <message>
        <source>read as</source>
        <translation>abgelesen als</translation>
    </message>
    <message>
        <source>screen</source>
        <translation>Schirm</translation>
    </message>
    <message>
        <source>L* a* b* as compared,  ±</source>
        <translation>L* a* b* für den Vergleich,  ±</translation>
    </message>
    <message>
        <source>Geometry of the reading</source>
        <translation>Geometrie der Messung</translation>
    </message>
    <message>
        <source>Light of the reading</source>
        <translation>Licht der Messung</translation>
    </message>
    <message>
        <source>L*a*b* measured in</source>
        <translation>L*a*b* gemessen in</translation>
    </message>
    <message>
        <source>Neighbours</source>
        <translation>Nachbarn</translation>
    </message>
    <message>
        <source>Neighbour {line}</source>
        <translation>Nachbar {line}</translation>
    </message>
    <message>
        <source>neighbour {line}</source>
        <translation>Nachbar {line}</translation>
    </message>
    <message>
        <source>What lies behind</source>
        <translation>Was dahinter liegt</translation>
    </message>
    <message>
        <source>Stands on</source>
        <translation>Steht auf</translation>
    </message>
    <message>
        <source>Stump or base</source>
        <translation>Stumpf oder Basis</translation>
    </message>
    <message>
        <source>Cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>stands on</source>
        <translation>steht auf</translation>
    </message>
    <message>
        <source>cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>The dentist&apos;s wish</source>
        <translation>Wunsch der Zahnärztin, des Zahnarztes</translation>
    </message>
    <message>
        <source>in their words</source>
        <translation>in deren Worten</translation>
    </message>
    <message>
        <source>cusps</source>
        <translation>Höcker</translation>
    </message>
    <message>
        <source>neighbour {number}</source>
        <translation>Nachbar {number}</translation>
    </message>
    <message>
        <source>{name} again</source>
        <translation>{name} noch einmal</translation>
    </message>
    <message>
        <source>convert by {ways}</source>
        <translation>umrechnen durch {ways}</translation>
    </message>
    <message>
        <source>Without the conversion, no difference to a prediction at 45/0, D65 is shown.</source>
        <translation>Ohne die Umrechnung wird kein Unterschied zu einer Vorhersage in 45/0, D65 gezeigt.</translation>
    </message>
    <message>
        <source>base</source>
        <translation>Basis</translation>
    </message>
    <message>
        <source>stump</source>
        <translation>Stumpf</translation>
    </message>
    <message>
        <source>The wish is {over} characters too long.</source>
        <translation>Der Wunsch ist um {over} Zeichen zu lang.</translation>
    </message>
    <message>
        <source>Assumed behind the crown: {stump}.</source>
        <translation>Hinter der Krone angenommen: {stump}.</translation>
    </message>
    <message>
        <source>Converted by {name}: {rows}.</source>
        <translation>Umgerechnet durch {name}: {rows}.</translation>
    </message>
</context>
<context>
    <name>jar rows</name>
    <message>
        <source>jar</source>
        <translation>Napf</translation>
    </message>
    <message>
        <source>drops</source>
        <translation>Tropfen</translation>
    </message>
    <message>
        <source>dye</source>
        <translation>Farbstoff</translation>
    </message>
    <message>
        <source>on chalk</source>
        <translation>auf Kreide</translation>
    </message>
    <message>
        <source>takes, drops</source>
        <translation>braucht, Tropfen</translation>
    </message>
    <message>
        <source>enough for</source>
        <translation>reicht für</translation>
    </message>
    <message>
        <source>smallest jar</source>
        <translation>kleinster Napf</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>jar {number}: {look}</source>
        <translation>Napf {number}: {look}</translation>
    </message>
    <message>
        <source>{drops} drops</source>
        <translation>{drops} Tropfen</translation>
    </message>
</context>
<context>
    <name>jar warnings</name>
    <message>
        <source>{drops} drops of dye on {liquid} of liquid; usual are {low} to {high}.</source>
        <translation>{drops} Tropfen Farbstoff auf {liquid} Tropfen Flüssigkeit; üblich sind {low} bis {high}.</translation>
    </message>
    <message>
        <source>Its {colour} dye looks like what {liquid} does after sintering.</source>
        <translation>Der Farbstoff ({colour}) sieht aus wie das, was {liquid} nach dem Sintern macht.</translation>
    </message>
    <message>
        <source>Looks like jar {number} on chalk; go by number and hatch.</source>
        <translation>Sieht auf Kreide aus wie Napf {number}; richten Sie sich nach Nummer und Schraffur.</translation>
    </message>
    <message>
        <source>Looks like jar {number} on chalk to some colour-blind eyes; go by number and hatch.</source>
        <translation>Sieht auf Kreide für manche farbenblinden Augen aus wie Napf {number}; richten Sie sich nach Nummer und Schraffur.</translation>
    </message>
</context>
<context>
    <name>job</name>
    <message>
        <source>{title} was stopped.</source>
        <translation>{title}: angehalten.</translation>
    </message>
    <message>
        <source>{title} needs more memory than there is.</source>
        <translation>{title}: braucht mehr Speicher, als da ist.</translation>
    </message>
    <message>
        <source>Close other programs or use a coarser mesh.</source>
        <translation>Schließen Sie andere Programme, oder nehmen Sie ein gröberes Netz.</translation>
    </message>
    <message>
        <source>{title} failed: {name}: {error}</source>
        <translation>{title}: fehlgeschlagen: {name}: {error}</translation>
    </message>
    <message>
        <source>The open case is unchanged. Please report this.</source>
        <translation>Der offene Fall ist unverändert. Bitte melden Sie das.</translation>
    </message>
</context>
<context>
    <name>journal</name>
    <message>
        <source>Unsaved work cannot be kept ({error}).</source>
        <translation>Ungespeicherte Arbeit kann nicht aufbewahrt werden ({error}).</translation>
    </message>
</context>
<context>
    <name>keeping</name>
    <message>
        <source>Saving</source>
        <translation>Speichern</translation>
    </message>
</context>
<context>
    <name>keys</name>
    <message>
        <source>shows all flat views</source>
        <translation>zeigt alle flachen Ansichten</translation>
    </message>
    <message>
        <source>shows the rosette</source>
        <translation>zeigt die Rosette</translation>
    </message>
    <message>
        <source>looks from occlusal</source>
        <translation>blickt von okklusal</translation>
    </message>
    <message>
        <source>looks from buccal</source>
        <translation>blickt von bukkal</translation>
    </message>
    <message>
        <source>looks from lingual, and locks a cell of the coat table</source>
        <translation>blickt von lingual und sperrt eine Zelle der Auftragstabelle</translation>
    </message>
    <message>
        <source>looks from mesial</source>
        <translation>blickt von mesial</translation>
    </message>
    <message>
        <source>looks from distal</source>
        <translation>blickt von distal</translation>
    </message>
    <message>
        <source>looks at the inner surface</source>
        <translation>blickt auf die Innenfläche</translation>
    </message>
    <message>
        <source>shows the crown before the last step</source>
        <translation>zeigt die Krone vor dem letzten Schritt</translation>
    </message>
    <message>
        <source>shows the bare block</source>
        <translation>zeigt den ungefärbten Rohling</translation>
    </message>
    <message>
        <source>zooms, and adds a coat</source>
        <translation>vergrößert und gibt einen Auftrag dazu</translation>
    </message>
    <message>
        <source>zooms, and takes a coat away</source>
        <translation>verkleinert und nimmt einen Auftrag weg</translation>
    </message>
    <message>
        <source>zooms</source>
        <translation>vergrößert</translation>
    </message>
    <message>
        <source>makes the brush smaller</source>
        <translation>macht den Pinsel kleiner</translation>
    </message>
    <message>
        <source>makes the brush larger</source>
        <translation>macht den Pinsel größer</translation>
    </message>
    <message>
        <source>shows the whole crown</source>
        <translation>zeigt die ganze Krone</translation>
    </message>
    <message>
        <source>shows the unit before</source>
        <translation>zeigt die Einheit davor</translation>
    </message>
    <message>
        <source>shows the next unit</source>
        <translation>zeigt die nächste Einheit</translation>
    </message>
    <message>
        <source>moves and turns</source>
        <translation>bewegt und dreht</translation>
    </message>
    <message>
        <source>shifts the crown</source>
        <translation>verschiebt die Krone</translation>
    </message>
    <message>
        <source>chooses</source>
        <translation>wählt</translation>
    </message>
    <message>
        <source>takes back what was begun last</source>
        <translation>nimmt zurück, was zuletzt begonnen wurde</translation>
    </message>
    <message>
        <source>goes to the next part of the window</source>
        <translation>geht zum nächsten Teil des Fensters</translation>
    </message>
    <message>
        <source>goes to the part before</source>
        <translation>geht zum Teil davor</translation>
    </message>
    <message>
        <source>clears coats</source>
        <translation>leert Aufträge</translation>
    </message>
    <message>
        <source>changes coats where they stand</source>
        <translation>ändert Aufträge an ihrem Platz</translation>
    </message>
    <message>
        <source>goes to the menus</source>
        <translation>geht zu den Menüs</translation>
    </message>
    <message>
        <source>copies</source>
        <translation>kopiert</translation>
    </message>
    <message>
        <source>cuts</source>
        <translation>schneidet aus</translation>
    </message>
    <message>
        <source>pastes</source>
        <translation>fügt ein</translation>
    </message>
    <message>
        <source>selects all</source>
        <translation>wählt alles</translation>
    </message>
    <message>
        <source>opens the menu of what has the keyboard</source>
        <translation>öffnet das Menü dessen, was die Tastatur hat</translation>
    </message>
    <message>
        <source>types coats into the table</source>
        <translation>tippt Aufträge in die Tabelle</translation>
    </message>
    <message>
        <source>{key} is the key of {command}. Take another, or free it there first.</source>
        <translation>{key} ist die Taste für {command}. Nehmen Sie eine andere, oder machen Sie sie dort zuerst frei.</translation>
    </message>
    <message>
        <source>{key} {does}. Take another.</source>
        <translation>{key} {does}. Nehmen Sie eine andere.</translation>
    </message>
    <message>
        <source>{key} opens the menu {menu}. Take another.</source>
        <translation>{key} öffnet das Menü {menu}. Nehmen Sie eine andere.</translation>
    </message>
</context>
<context>
    <name>lab book</name>
    <message>
        <source>The lab book was damaged; it is kept as {name} beside a new one that is empty.</source>
        <translation>Das Laborbuch war beschädigt; es ist als {name} aufbewahrt, neben einem neuen, leeren.</translation>
    </message>
</context>
<context>
    <name>legends</name>
    <message>
        <source>nothing has been predicted yet</source>
        <translation>noch ist nichts vorhergesagt</translation>
    </message>
    <message>
        <source>Legend of the look</source>
        <translation>Legende der Ansicht</translation>
    </message>
    <message>
        <source>Depth of grinding</source>
        <translation>Schleiftiefe</translation>
    </message>
    <message>
        <source>Grinding is being worked out</source>
        <translation>Beschleifen wird ausgerechnet</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Stop working out the ground crown</source>
        <translation>Berechnung der beschliffenen Krone anhalten</translation>
    </message>
    <message>
        <source>Ground by {depth:.1f} millimetres</source>
        <translation>Um {depth:.1f} Millimeter beschliffen</translation>
    </message>
    <message>
        <source>outer surface ground by</source>
        <translation>Außenfläche beschliffen um</translation>
    </message>
    <message>
        <source>walls thinner by as much; polished again</source>
        <translation>Wände um so viel dünner; neu poliert</translation>
    </message>
</context>
<context>
    <name>lights</name>
    <message>
        <source>daylight</source>
        <translation>Tageslicht</translation>
    </message>
    <message>
        <source>warm daylight</source>
        <translation>warmes Tageslicht</translation>
    </message>
    <message>
        <source>filament lamp</source>
        <translation>Glühlampe</translation>
    </message>
    <message>
        <source>daylight, older standard</source>
        <translation>Tageslicht, ältere Norm</translation>
    </message>
    <message>
        <source>white LED</source>
        <translation>weiße LED</translation>
    </message>
    <message>
        <source>fluorescent lamp, cool white</source>
        <translation>Leuchtstofflampe, kaltweiß</translation>
    </message>
    <message>
        <source>fluorescent lamp, three bands</source>
        <translation>Leuchtstofflampe, drei Banden</translation>
    </message>
    <message>
        <source>Fluorescence is not modelled.</source>
        <translation>Fluoreszenz wird nicht nachgebildet.</translation>
    </message>
    <message>
        <source>dE00 {de00:.1f}, {light} to {other}</source>
        <translation>dE00 {de00:.1f}, {light} zu {other}</translation>
    </message>
</context>
<context>
    <name>lights dialog</name>
    <message>
        <source>Under all lights</source>
        <translation>Unter allen Lichtarten</translation>
    </message>
    <message>
        <source>What the crown looks like to an eye that is used to each light. Where an area changes more than the teeth beside it, it stands out under that light.</source>
        <translation>Wie die Krone einem Auge erscheint, das an das jeweilige Licht gewöhnt ist. Wo sich eine Fläche mehr ändert als die Zähne daneben, fällt sie unter diesem Licht auf.</translation>
    </message>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>largest change</source>
        <translation>größte Änderung</translation>
    </message>
    <message>
        <source>{name} under {light}</source>
        <translation>{name} unter {light}</translation>
    </message>
    <message>
        <source>{lights}; {degrees}° observer. {fluorescence}</source>
        <translation>{lights}; {degrees}°-Beobachter. {fluorescence}</translation>
    </message>
</context>
<context>
    <name>limits</name>
    <message>
        <source>Every crown is thin at its margin: walls are judged above the last millimetre.</source>
        <translation>Jede Krone ist am Rand dünn: Wände werden oberhalb des letzten Millimeters beurteilt.</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Less than this is a few points of the mesh.</source>
        <translation>Weniger als das sind ein paar Punkte des Netzes.</translation>
    </message>
    <message>
        <source>mm2</source>
        <translation>mm2</translation>
    </message>
    <message>
        <source>Usual guidance for zirconia between front teeth.</source>
        <translation>Übliche Empfehlung für Zirkonoxid zwischen Frontzähnen.</translation>
    </message>
    <message>
        <source>Usual guidance for zirconia behind the canine.</source>
        <translation>Übliche Empfehlung für Zirkonoxid hinter dem Eckzahn.</translation>
    </message>
    <message>
        <source>Usual guidance beside two or more pontics in a row.</source>
        <translation>Übliche Empfehlung neben zwei oder mehr Brückengliedern in Folge.</translation>
    </message>
    <message>
        <source>Paravina et al. 2015: half of 175 observers accept up to 1.8.</source>
        <translation>Paravina et al. 2015: Die Hälfte von 175 Beobachtern akzeptiert bis 1.8.</translation>
    </message>
    <message>
        <source>dE00</source>
        <translation>dE00</translation>
    </message>
    <message>
        <source>A smaller spot is not noticed.</source>
        <translation>Ein kleinerer Fleck fällt nicht auf.</translation>
    </message>
    <message>
        <source>Below it a coat costs time and hardly changes the colour; follows from the saturation of the process.</source>
        <translation>Darunter kostet ein Auftrag Zeit und ändert die Farbe kaum; folgt aus der Sättigung des Verfahrens.</translation>
    </message>
    <message>
        <source>of a first coat</source>
        <translation>eines ersten Auftrags</translation>
    </message>
    <message>
        <source>Paravina et al. 2015: half of 175 observers accept up to 1.8; here of lightness alone.</source>
        <translation>Paravina et al. 2015: Die Hälfte von 175 Beobachtern akzeptiert bis 1.8; hier von der Helligkeit allein.</translation>
    </message>
    <message>
        <source>What a liquid must do at least before it can be said to be undone.</source>
        <translation>Was eine Flüssigkeit mindestens tun muss, ehe man sagen kann, dass es aufgehoben wird.</translation>
    </message>
    <message>
        <source>in a*, b*</source>
        <translation>in a*, b*</translation>
    </message>
    <message>
        <source>Half of what one liquid does to hue and chroma is undone by another.</source>
        <translation>Die Hälfte dessen, was eine Flüssigkeit an Farbton und Sättigung tut, hebt eine andere wieder auf.</translation>
    </message>
    <message>
        <source>share</source>
        <translation>Anteil</translation>
    </message>
    <message>
        <source>Paravina et al. 2015: half of 175 observers see 0.8; by more than that the two are needed.</source>
        <translation>Paravina et al. 2015: Die Hälfte von 175 Beobachtern sieht 0.8; um mehr als das werden beide gebraucht.</translation>
    </message>
    <message>
        <source>Fewer coats than this read as none.</source>
        <translation>Weniger Aufträge als das gelten als keine.</translation>
    </message>
    <message>
        <source>coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>A wider bare area is meant; a narrower one is a gap between two painted ones.</source>
        <translation>Gemeint ist eine breitere ungefärbte Fläche; eine schmalere ist eine Lücke zwischen zwei gefärbten.</translation>
    </message>
    <message>
        <source>A shorter gap closes by itself, as liquid spreads.</source>
        <translation>Eine kürzere Lücke schließt sich von selbst, wenn sich die Flüssigkeit ausbreitet.</translation>
    </message>
    <message>
        <source>What one stroke of a fine brush fills; wider, a line becomes a stripe.</source>
        <translation>Was ein Strich eines feinen Pinsels füllt; breiter wird aus einer Linie ein Streifen.</translation>
    </message>
    <message>
        <source>Pits, where fissures meet, may be wider.</source>
        <translation>Grübchen, wo Fissuren zusammentreffen, dürfen breiter sein.</translation>
    </message>
    <message>
        <source>Usual occlusal adjustment is 0.1 to 0.3 mm.</source>
        <translation>Übliches okklusales Einschleifen ist 0.1 bis 0.3 mm.</translation>
    </message>
    <message>
        <source>Contacts lie on tips and ridges, down to this far below them.</source>
        <translation>Kontakte liegen auf Spitzen und Leisten, bis so weit unter ihnen.</translation>
    </message>
    <message>
        <source>Starter liquids that cool a cusp are designed to stay within it; only where a* ends below 0.</source>
        <translation>Musterflüssigkeiten, die einen Höcker kühler machen, sind so entworfen, dass sie darin bleiben; nur wo a* unter 0 endet.</translation>
    </message>
    <message>
        <source>a*</source>
        <translation>a*</translation>
    </message>
    <message>
        <source>Programmes up to two hours, cold to opening, are called fast.</source>
        <translation>Programme bis zwei Stunden, kalt bis zum Öffnen, heißen schnell.</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>Usual guidance: fast programmes for single units and short bridges.</source>
        <translation>Übliche Empfehlung: schnelle Programme für Einzelkronen und kurze Brücken.</translation>
    </message>
    <message>
        <source>units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>Usual guidance: thick walls neither heat nor cool evenly in a fast programme.</source>
        <translation>Übliche Empfehlung: Dicke Wände werden in einem schnellen Programm weder gleichmäßig warm noch kalt.</translation>
    </message>
    <message>
        <source>Less than this is no thick place.</source>
        <translation>Weniger als das ist keine dicke Stelle.</translation>
    </message>
</context>
<context>
    <name>look bar</name>
    <message>
        <source>Sintered</source>
        <translation>Gesintert</translation>
    </message>
    <message>
        <source>Predicted colour after sintering</source>
        <translation>Vorhergesagte Farbe nach dem Sintern</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Am Tisch</translation>
    </message>
    <message>
        <source>Chalky ceramic with the dyes of the jars</source>
        <translation>Kreidige Keramik mit den Farbstoffen der Näpfe</translation>
    </message>
    <message>
        <source>Zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>Zones and accents, colour and hatch</source>
        <translation>Zonen und Akzente, Farbe und Schraffur</translation>
    </message>
    <message>
        <source>Coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>Number of coats of the chosen step</source>
        <translation>Zahl der Aufträge des gewählten Schritts</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Helligkeit</translation>
    </message>
    <message>
        <source>L* only, in greys</source>
        <translation>nur L*, in Grautönen</translation>
    </message>
    <message>
        <source>Offset</source>
        <translation>Abstand</translation>
    </message>
    <message>
        <source>Difference to what is wanted</source>
        <translation>Unterschied zum Ziel</translation>
    </message>
    <message>
        <source>Thickness</source>
        <translation>Wandstärke</translation>
    </message>
    <message>
        <source>Wall, about the block&apos;s minimum</source>
        <translation>Wandstärke, verglichen mit dem Mindestmaß des Rohlings</translation>
    </message>
    <message>
        <source>In the row</source>
        <translation>In der Reihe</translation>
    </message>
    <message>
        <source>Between its neighbours in the arch</source>
        <translation>Zwischen ihren Nachbarn im Zahnbogen</translation>
    </message>
    <message>
        <source>Ground</source>
        <translation>Beschliffen</translation>
    </message>
    <message>
        <source>What shows after occlusal adjustment</source>
        <translation>Was nach dem Einschleifen zu sehen ist</translation>
    </message>
    <message>
        <source>Look {name}</source>
        <translation>Ansicht {name}</translation>
    </message>
    <message>
        <source>{hint} (Alt+{number})</source>
        <translation>{hint} (Alt+{number})</translation>
    </message>
    <message>
        <source>Looks</source>
        <translation>Ansichten</translation>
    </message>
    <message>
        <source>Shading</source>
        <translation>Schattierung</translation>
    </message>
    <message>
        <source>Light and shadow on the crown</source>
        <translation>Licht und Schatten auf der Krone</translation>
    </message>
    <message>
        <source>Flat</source>
        <translation>Flach</translation>
    </message>
    <message>
        <source>Flat views beside the crown (Ctrl+F)</source>
        <translation>Flache Ansichten neben der Krone (Strg+F)</translation>
    </message>
    <message>
        <source>Fit</source>
        <translation>Einpassen</translation>
    </message>
    <message>
        <source>Show the whole crown (Home)</source>
        <translation>Ganze Krone zeigen (Pos1)</translation>
    </message>
    <message>
        <source>{degrees}° observer</source>
        <translation>{degrees}°-Beobachter</translation>
    </message>
    <message>
        <source>Check the display...</source>
        <translation>Bildschirm prüfen...</translation>
    </message>
    <message>
        <source>Light {light}</source>
        <translation>Licht {light}</translation>
    </message>
    <message>
        <source>Light {light}, {degrees}°</source>
        <translation>Licht {light}, {degrees}°</translation>
    </message>
    <message>
        <source>Light {light}, {degrees} degrees</source>
        <translation>Licht {light}, {degrees} Grad</translation>
    </message>
    <message>
        <source>The light the crown is seen under: {name}. Figures stay those of D65, 2°.</source>
        <translation>Das Licht, unter dem die Krone gesehen wird: {name}. Zahlen bleiben die von D65, 2°.</translation>
    </message>
</context>
<context>
    <name>look desk</name>
    <message>
        <source>stopped; choose a depth to go on</source>
        <translation>angehalten; wählen Sie eine Tiefe, um fortzufahren</translation>
    </message>
    <message>
        <source>nothing has been predicted yet</source>
        <translation>noch ist nichts vorhergesagt</translation>
    </message>
    <message>
        <source>greys stretched to three times their contrast</source>
        <translation>Grautöne auf dreifachen Kontrast gestreckt</translation>
    </message>
    <message>
        <source>body L* {lightness:.1f}, as predicted</source>
        <translation>Körper L* {lightness:.1f}, wie vorhergesagt</translation>
    </message>
    <message>
        <source>Value, L*</source>
        <translation>Helligkeit, L*</translation>
    </message>
    <message>
        <source>{most:g} or more</source>
        <translation>{most:g} oder mehr</translation>
    </message>
    <message>
        <source>half of observers see 0.8, accept 1.8</source>
        <translation>jeder Zweite sieht 0.8, akzeptiert 1.8</translation>
    </message>
    <message>
        <source>not calibrated: direction, not a match</source>
        <translation>nicht kalibriert: nur eine Richtung</translation>
    </message>
    <message>
        <source>nothing is wanted there</source>
        <translation>dort ist nichts gewünscht</translation>
    </message>
    <message>
        <source>no wanted colour has been set</source>
        <translation>noch ist keine Farbe gewünscht</translation>
    </message>
    <message>
        <source>wanted colour was measured otherwise</source>
        <translation>gewünschte Farbe wurde anders gemessen</translation>
    </message>
    <message>
        <source>Offset from wanted, {de}</source>
        <translation>Abstand vom Ziel, {de}</translation>
    </message>
    <message>
        <source>orange: below the minimum of {block}</source>
        <translation>orange: unter dem Mindestmaß von {block}</translation>
    </message>
    <message>
        <source>assumed: the crown has no inner surface</source>
        <translation>angenommen: Die Krone hat keine Innenfläche</translation>
    </message>
    <message>
        <source>Wall, mm sintered, after grinding</source>
        <translation>Wandstärke, mm gesintert, nach dem Beschleifen</translation>
    </message>
    <message>
        <source>Wall, mm sintered</source>
        <translation>Wandstärke, mm gesintert</translation>
    </message>
    <message>
        <source>the body&apos;s L* changes by {change}</source>
        <translation>L* des Körpers ändert sich um {change}</translation>
    </message>
    <message>
        <source>worked out; shown as it is until then</source>
        <translation>wird ausgerechnet; gezeigt wie bisher</translation>
    </message>
    <message>
        <source>grinding</source>
        <translation>Beschleifen</translation>
    </message>
    <message>
        <source>Grinding</source>
        <translation>Beschleifen</translation>
    </message>
    <message>
        <source>ground {depth_mm:.1f} mm: {colour}</source>
        <translation>{depth_mm:.1f} mm beschliffen: {colour}</translation>
    </message>
    <message>
        <source>value L* {lightness:.1f}</source>
        <translation>Helligkeit L* {lightness:.1f}</translation>
    </message>
    <message>
        <source>value L* {lightness:.1f}, {step} from the body</source>
        <translation>Helligkeit L* {lightness:.1f}, {step} gegen den Körper</translation>
    </message>
    <message>
        <source>nothing to compare with</source>
        <translation>nichts zum Vergleichen</translation>
    </message>
    <message>
        <source>{off:.1f} {de} from {colour}</source>
        <translation>{off:.1f} {de} von {colour}</translation>
    </message>
    <message>
        <source>{wall:.2f} mm, {over:.2f} above the minimum {least:.2f}</source>
        <translation>{wall:.2f} mm, {over:.2f} über dem Mindestmaß {least:.2f}</translation>
    </message>
    <message>
        <source>{wall:.2f} mm, {over:.2f} below the minimum {least:.2f}</source>
        <translation>{wall:.2f} mm, {over:.2f} unter dem Mindestmaß {least:.2f}</translation>
    </message>
</context>
<context>
    <name>main window</name>
    <message>
        <source>Sample materials are invented: do not fire by them</source>
        <translation>Mustermaterialien sind erfunden: Nicht danach arbeiten</translation>
    </message>
    <message>
        <source>A planning aid: the makers&apos; instructions for use decide</source>
        <translation>Eine Planungshilfe: Es gilt die Gebrauchsanweisung der Hersteller</translation>
    </message>
    <message>
        <source>Plan</source>
        <translation>Plan</translation>
    </message>
    <message>
        <source>Outcome</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>Run</source>
        <translation>Ablauf</translation>
    </message>
    <message>
        <source>revision {revision}</source>
        <translation>Revision {revision}</translation>
    </message>
    <message>
        <source>read-only</source>
        <translation>nur lesen</translation>
    </message>
    <message>
        <source>not saved</source>
        <translation>nicht gespeichert</translation>
    </message>
    <message>
        <source>{count:,} points</source>
        <translation>{count} Punkte</translation>
    </message>
    <message>
        <source>plan {hash_}</source>
        <translation>Plan {hash_}</translation>
    </message>
</context>
<context>
    <name>manual bar</name>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Forward</source>
        <translation>Vor</translation>
    </message>
    <message>
        <source>contents</source>
        <translation>Inhalt</translation>
    </message>
    <message>
        <source>keys and mouse</source>
        <translation>Tasten und Maus</translation>
    </message>
    <message>
        <source>search the manual</source>
        <translation>Handbuch durchsuchen</translation>
    </message>
    <message>
        <source>Search the manual</source>
        <translation>Handbuch durchsuchen</translation>
    </message>
    <message>
        <source>Words in all pages (Ctrl+F); Return jumps, Down goes to the list</source>
        <translation>Wörter auf allen Seiten (Strg+F); Eingabe springt, Pfeil ab geht zur Liste</translation>
    </message>
    <message>
        <source>The manual is in English.</source>
        <translation>Das Handbuch ist auf Englisch.</translation>
    </message>
    <message>
        <source>nothing found</source>
        <translation>nichts gefunden</translation>
    </message>
    <message>
        <source>1 line</source>
        <translation>1 Zeile</translation>
    </message>
    <message>
        <source>{count} lines</source>
        <translation>{count} Zeilen</translation>
    </message>
</context>
<context>
    <name>manual text</name>
    <message>
        <source>page of the manual</source>
        <translation>Seite des Handbuchs</translation>
    </message>
    <message>
        <source># The page is missing

The file {name} of the manual cannot be read. Install stainmap again.</source>
        <translation># Die Seite fehlt

Die Datei {name} des Handbuchs kann nicht gelesen werden. Installieren Sie stainmap neu.</translation>
    </message>
</context>
<context>
    <name>manual window</name>
    <message>
        <source>sections of the page</source>
        <translation>Abschnitte der Seite</translation>
    </message>
    <message>
        <source>where it stands</source>
        <translation>wo es steht</translation>
    </message>
    <message>
        <source>Manual</source>
        <translation>Handbuch</translation>
    </message>
</context>
<context>
    <name>margin</name>
    <message>
        <source>The outer and the inner surface cannot be told apart.</source>
        <translation>Außen- und Innenfläche lassen sich nicht unterscheiden.</translation>
    </message>
    <message>
        <source>Check that the biting side points along the occlusal axis.</source>
        <translation>Prüfen Sie, ob die Kauseite entlang der Kauachse zeigt.</translation>
    </message>
</context>
<context>
    <name>material</name>
    <message>
        <source>Block absorption must not be negative, its decay above zero.</source>
        <translation>Die Absorption eines Rohlings darf nicht negativ sein, ihr Abklingen nicht null.</translation>
    </message>
    <message>
        <source>Block &apos;{name}&apos; has {count} layers.</source>
        <translation>Rohling „{name}“ hat {count} Schichten.</translation>
    </message>
    <message>
        <source>Give 1 to 6.</source>
        <translation>Geben Sie 1 bis 6 an.</translation>
    </message>
    <message>
        <source>Block &apos;{name}&apos; has the enlargement factor {enlargement_factor}.</source>
        <translation>Rohling „{name}“ hat den Vergrößerungsfaktor {enlargement_factor}.</translation>
    </message>
    <message>
        <source>It lies between 1.0 and 1.5, usually near 1.25.</source>
        <translation>Er liegt zwischen 1.0 und 1.5, meist nahe 1.25.</translation>
    </message>
    <message>
        <source>The layers of block &apos;{name}&apos; are not in order.</source>
        <translation>Die Schichten des Rohlings „{name}“ sind nicht in der Reihenfolge.</translation>
    </message>
    <message>
        <source>Start at 0 mm and go up.</source>
        <translation>Beginnen Sie bei 0 mm und gehen Sie aufwärts.</translation>
    </message>
    <message>
        <source>Liquid &apos;{name}&apos; has a negative amount of an ion.</source>
        <translation>Flüssigkeit „{name}“ hat eine negative Menge eines Ions.</translation>
    </message>
    <message>
        <source>Liquid &apos;{name}&apos; changes scattering by {scatter_change}.</source>
        <translation>Flüssigkeit „{name}“ ändert die Streuung um {scatter_change}.</translation>
    </message>
    <message>
        <source>Give a value between -0.3 and 0.3.</source>
        <translation>Geben Sie einen Wert zwischen -0.3 und 0.3 an.</translation>
    </message>
    <message>
        <source>{whose} multiplies scattering by {factor}.</source>
        <translation>{whose} vervielfacht die Streuung um {factor}.</translation>
    </message>
    <message>
        <source>Give a factor between 0.7 and 1.8.</source>
        <translation>Geben Sie einen Faktor zwischen 0.7 und 1.8 an.</translation>
    </message>
    <message>
        <source>A coupon&apos;s reading names nobody or no day.</source>
        <translation>Die Messung eines Plättchens nennt niemanden oder keinen Tag.</translation>
    </message>
    <message>
        <source>Say who read it, and when.</source>
        <translation>Sagen Sie, wer es gemessen hat und wann.</translation>
    </message>
    <message>
        <source>Programme &apos;{name}&apos; has an empty segment.</source>
        <translation>Programm „{name}“ hat einen leeren Abschnitt.</translation>
    </message>
    <message>
        <source>Programme &apos;{name}&apos; dries for {drying:g} minutes.</source>
        <translation>Programm „{name}“ trocknet {drying:g} Minuten.</translation>
    </message>
    <message>
        <source>Give more than 0 and at most 600, or leave the field out.</source>
        <translation>Geben Sie mehr als 0 und höchstens 600 an, oder lassen Sie das Feld weg.</translation>
    </message>
    <message>
        <source>Stump &apos;{name}&apos; reflects less than nothing or more than all.</source>
        <translation>Stumpf „{name}“ reflektiert weniger als nichts oder mehr als alles.</translation>
    </message>
    <message>
        <source>There is no {kind} called &apos;{name}&apos;.</source>
        <translation>„{name}“ ({kind}) gibt es nicht.</translation>
    </message>
    <message>
        <source>Known: {known}.</source>
        <translation>Bekannt: {known}.</translation>
    </message>
    <message>
        <source>The catalogue is empty.</source>
        <translation>Das Verzeichnis ist leer.</translation>
    </message>
</context>
<context>
    <name>materials</name>
    <message>
        <source>Blocks</source>
        <translation>Rohlinge</translation>
    </message>
    <message>
        <source>Liquids</source>
        <translation>Flüssigkeiten</translation>
    </message>
    <message>
        <source>Ions</source>
        <translation>Ionen</translation>
    </message>
    <message>
        <source>Dyes</source>
        <translation>Farbstoffe</translation>
    </message>
    <message>
        <source>Programmes</source>
        <translation>Programme</translation>
    </message>
    <message>
        <source>Stumps</source>
        <translation>Stümpfe</translation>
    </message>
    <message>
        <source>Cements</source>
        <translation>Zemente</translation>
    </message>
</context>
<context>
    <name>materials case</name>
    <message>
        <source>as its block</source>
        <translation>als seinen Rohling</translation>
    </message>
    <message>
        <source>in jar {jar}</source>
        <translation>in Napf {jar}</translation>
    </message>
    <message>
        <source>as its sintering programme</source>
        <translation>als sein Sinterprogramm</translation>
    </message>
    <message>
        <source>The open case uses the {kind} &apos;{name}&apos; {where}.</source>
        <translation>Der offene Fall verwendet „{name}“ ({kind}) {where}.</translation>
    </message>
    <message>
        <source>Choose another there first.</source>
        <translation>Wählen Sie dort zuerst etwas anderes.</translation>
    </message>
    <message>
        <source>in its {kind} &apos;{name}&apos;</source>
        <translation>in „{name}“ ({kind})</translation>
    </message>
    <message>
        <source>not in the case</source>
        <translation>nicht im Fall</translation>
    </message>
    <message>
        <source>the case has other numbers</source>
        <translation>der Fall hat andere Zahlen</translation>
    </message>
    <message>
        <source>used {where}</source>
        <translation>verwendet {where}</translation>
    </message>
    <message>
        <source>in the case</source>
        <translation>im Fall</translation>
    </message>
    <message>
        <source>other</source>
        <translation>anders</translation>
    </message>
    <message>
        <source>used</source>
        <translation>verwendet</translation>
    </message>
    <message>
        <source>same</source>
        <translation>gleich</translation>
    </message>
    <message>
        <source>behind its {region}</source>
        <translation>dahinter ({region})</translation>
    </message>
</context>
<context>
    <name>materials curves</name>
    <message>
        <source>wavelength, nm</source>
        <translation>Wellenlänge, nm</translation>
    </message>
    <message>
        <source>Absorption</source>
        <translation>Absorption</translation>
    </message>
    <message>
        <source>relative to its amount</source>
        <translation>im Verhältnis zu seiner Menge</translation>
    </message>
    <message>
        <source>Furnace</source>
        <translation>Ofen</translation>
    </message>
    <message>
        <source>Reflectance</source>
        <translation>Reflexion</translation>
    </message>
    <message>
        <source>share of light</source>
        <translation>Anteil des Lichts</translation>
    </message>
    <message>
        <source>layer {at}</source>
        <translation>Schicht {at}</translation>
    </message>
    <message>
        <source>share of light, 45/0</source>
        <translation>Anteil des Lichts, 45/0</translation>
    </message>
    <message>
        <source>Scattering</source>
        <translation>Streuung</translation>
    </message>
    <message>
        <source>1/mm, reduced, slow programme</source>
        <translation>1/mm, reduziert, langsames Programm</translation>
    </message>
    <message>
        <source>1/mm, at full load</source>
        <translation>1/mm, bei voller Beladung</translation>
    </message>
    <message>
        <source>chalk</source>
        <translation>Kreide</translation>
    </message>
    <message>
        <source>1 drop</source>
        <translation>1 Tropfen</translation>
    </message>
    <message>
        <source>{drops} drops</source>
        <translation>{drops} Tropfen</translation>
    </message>
    <message>
        <source>On chalk</source>
        <translation>Auf Kreide</translation>
    </message>
    <message>
        <source>drops on 25 of liquid, fully loaded</source>
        <translation>Tropfen auf 25 Flüssigkeit, voll beladen</translation>
    </message>
    <message>
        <source>Absorption and scattering</source>
        <translation>Absorption und Streuung</translation>
    </message>
</context>
<context>
    <name>materials desk</name>
    <message>
        <source>Materials</source>
        <translation>Materialien</translation>
    </message>
    <message>
        <source>Checking it…</source>
        <translation>Wird geprüft…</translation>
    </message>
    <message>
        <source>Checking the material</source>
        <translation>Material wird geprüft</translation>
    </message>
    <message>
        <source>Rename {kind}</source>
        <translation>Umbenennen: {kind}</translation>
    </message>
    <message>
        <source>New name of {name}:</source>
        <translation>Neuer Name für {name}:</translation>
    </message>
    <message>
        <source>Removed: {names}.</source>
        <translation>Entfernt: {names}.</translation>
    </message>
    <message>
        <source>Solving…</source>
        <translation>Wird berechnet…</translation>
    </message>
    <message>
        <source>Solving a block</source>
        <translation>Rohling wird berechnet</translation>
    </message>
    <message>
        <source>Read a spectrum</source>
        <translation>Spektrum lesen</translation>
    </message>
    <message>
        <source>Reading a spectrum</source>
        <translation>Spektrum wird gelesen</translation>
    </message>
    <message>
        <source>Write a spectrum</source>
        <translation>Spektrum schreiben</translation>
    </message>
    <message>
        <source>Import materials</source>
        <translation>Materialien importieren</translation>
    </message>
    <message>
        <source>Importing materials</source>
        <translation>Materialien werden importiert</translation>
    </message>
    <message>
        <source>Export materials</source>
        <translation>Materialien exportieren</translation>
    </message>
    <message>
        <source>change {kind} {name}</source>
        <translation>{kind} {name} ändern</translation>
    </message>
    <message>
        <source>add {kind} {name}</source>
        <translation>{kind} {name} hinzufügen</translation>
    </message>
    <message>
        <source>remove {kind} {name}</source>
        <translation>{kind} {name} entfernen</translation>
    </message>
    <message>
        <source>put {kind} {name} into the case</source>
        <translation>{kind} {name} in den Fall übernehmen</translation>
    </message>
    <message>
        <source>import materials of {name}</source>
        <translation>Materialien aus {name} importieren</translation>
    </message>
    <message>
        <source>Changes are not kept yet: {names}. Keep them in the laboratory&apos;s set?</source>
        <translation>Noch nicht behaltene Änderungen: {names}. Im Bestand des Labors behalten?</translation>
    </message>
    <message>
        <source>new {kind}</source>
        <translation>neu: {kind}</translation>
    </message>
    <message>
        <source>{name} is a copy of the first {kind}, to be changed.</source>
        <translation>{name} ist eine Kopie des ersten Eintrags dieser Art ({kind}), zum Ändern.</translation>
    </message>
    <message>
        <source>Your own {name} takes the place of the one that came.</source>
        <translation>Ihr eigener Eintrag {name} tritt an die Stelle des mitgelieferten.</translation>
    </message>
    <message>
        <source>{name} is yours to change.</source>
        <translation>{name} gehört Ihnen zum Ändern.</translation>
    </message>
    <message>
        <source>{name} is kept in the laboratory&apos;s set.</source>
        <translation>{name} ist im Bestand des Labors behalten.</translation>
    </message>
    <message>
        <source>{name} is called {new} in the laboratory&apos;s set.</source>
        <translation>{name} heißt im Bestand des Labors jetzt {new}.</translation>
    </message>
    <message>
        <source>The open case keeps {name} besides.</source>
        <translation>Der offene Fall behält daneben {name}.</translation>
    </message>
    <message>
        <source>The open case has {name} as it is kept here; undo takes it back.</source>
        <translation>Der offene Fall hat {name}, wie es hier behalten ist; Rückgängig nimmt es zurück.</translation>
    </message>
    <message>
        <source>The open case has it too, as a step that can be undone.</source>
        <translation>Der offene Fall hat es auch, als Schritt, der sich rückgängig machen lässt.</translation>
    </message>
    <message>
        <source>The open case stays as it is.</source>
        <translation>Der offene Fall bleibt, wie er ist.</translation>
    </message>
    <message>
        <source>Left out: {sentences}</source>
        <translation>Ausgelassen: {sentences}</translation>
    </message>
    <message>
        <source>Written: {path}</source>
        <translation>Geschrieben: {path}</translation>
    </message>
    <message>
        <source>Nothing new was in the file.</source>
        <translation>In der Datei war nichts Neues.</translation>
    </message>
    <message>
        <source>Imported: {names}.</source>
        <translation>Importiert: {names}.</translation>
    </message>
    <message>
        <source>Exported: {names}, to {path}</source>
        <translation>Exportiert: {names}, nach {path}</translation>
    </message>
    <message>
        <source>Only the laboratory&apos;s own entries can be renamed.</source>
        <translation>Nur die eigenen Einträge des Labors können umbenannt werden.</translation>
    </message>
    <message>
        <source>It has changes that are not kept yet.</source>
        <translation>Es hat Änderungen, die noch nicht behalten sind.</translation>
    </message>
    <message>
        <source>Keep or discard them first.</source>
        <translation>Behalten oder verwerfen Sie sie zuerst.</translation>
    </message>
    <message>
        <source>There is an own dye of that name already.</source>
        <translation>Einen eigenen Farbstoff dieses Namens gibt es schon.</translation>
    </message>
    <message>
        <source>Nothing is chosen.</source>
        <translation>Nichts ist gewählt.</translation>
    </message>
    <message>
        <source>Choose entries of the list first.</source>
        <translation>Wählen Sie zuerst Einträge der Liste.</translation>
    </message>
</context>
<context>
    <name>materials editor</name>
    <message>
        <source>Add a layer</source>
        <translation>Schicht hinzufügen</translation>
    </message>
    <message>
        <source>Add an ion</source>
        <translation>Ion hinzufügen</translation>
    </message>
    <message>
        <source>Add a band</source>
        <translation>Bande hinzufügen</translation>
    </message>
    <message>
        <source>Add a piece</source>
        <translation>Stück hinzufügen</translation>
    </message>
    <message>
        <source>Remove the layer</source>
        <translation>Schicht entfernen</translation>
    </message>
    <message>
        <source>Remove the ion</source>
        <translation>Ion entfernen</translation>
    </message>
    <message>
        <source>Remove the band</source>
        <translation>Bande entfernen</translation>
    </message>
    <message>
        <source>Remove the piece</source>
        <translation>Stück entfernen</translation>
    </message>
    <message>
        <source>Where the numbers come from</source>
        <translation>Woher die Zahlen kommen</translation>
    </message>
    <message>
        <source>What the plot shows</source>
        <translation>Was das Diagramm zeigt</translation>
    </message>
    <message>
        <source>Absorption</source>
        <translation>Absorption</translation>
    </message>
    <message>
        <source>Numbers</source>
        <translation>Zahlen</translation>
    </message>
    <message>
        <source>Numbers of the material</source>
        <translation>Zahlen des Materials</translation>
    </message>
    <message>
        <source>What the material is made up of</source>
        <translation>Woraus das Material besteht</translation>
    </message>
    <message>
        <source>Add a row</source>
        <translation>Zeile hinzufügen</translation>
    </message>
    <message>
        <source>Remove the row</source>
        <translation>Zeile entfernen</translation>
    </message>
    <message>
        <source>Solve from the colour</source>
        <translation>Aus der Farbe berechnen</translation>
    </message>
    <message>
        <source>Read a spectrum...</source>
        <translation>Spektrum lesen...</translation>
    </message>
    <message>
        <source>Write a spectrum...</source>
        <translation>Spektrum schreiben...</translation>
    </message>
    <message>
        <source>also in the open case</source>
        <translation>auch im offenen Fall</translation>
    </message>
    <message>
        <source>The case has materials of its own. With this, what you keep, add or import comes into it too, as a step that can be undone.</source>
        <translation>Der Fall hat eigene Materialien. Hiermit kommt auch in ihn, was Sie behalten, hinzufügen oder importieren, als Schritt, der sich rückgängig machen lässt.</translation>
    </message>
    <message>
        <source>Put into the case</source>
        <translation>In den Fall übernehmen</translation>
    </message>
    <message>
        <source>Discard</source>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Keep the changes</source>
        <translation>Änderungen behalten</translation>
    </message>
    <message>
        <source>value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>Expected is {expected}.</source>
        <translation>Erwartet: {expected}.</translation>
    </message>
</context>
<context>
    <name>materials files</name>
    <message>
        <source>Materials (*.toml)</source>
        <translation>Materialien (*.toml)</translation>
    </message>
    <message>
        <source>Spectra (*.csv *.txt)</source>
        <translation>Spektren (*.csv *.txt)</translation>
    </message>
    <message>
        <source>Of which?</source>
        <translation>Wovon?</translation>
    </message>
</context>
<context>
    <name>materials form</name>
    <message>
        <source>one of the list</source>
        <translation>einer aus der Liste</translation>
    </message>
    <message>
        <source>any text</source>
        <translation>beliebiger Text</translation>
    </message>
    <message>
        <source>{low:g} to {high:g}</source>
        <translation>{low:g} bis {high:g}</translation>
    </message>
    <message>
        <source>{span}, or nothing: {empty}</source>
        <translation>{span}, oder nichts: {empty}</translation>
    </message>
    <message>
        <source>solved from the colour</source>
        <translation>aus der Farbe berechnet</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>Enlargement factor</source>
        <translation>Vergrößerungsfaktor</translation>
    </message>
    <message>
        <source>Least wall, mm sintered</source>
        <translation>Mindestwandstärke, mm gesintert</translation>
    </message>
    <message>
        <source>Purpose</source>
        <translation>Zweck</translation>
    </message>
    <message>
        <source>Change of scattering</source>
        <translation>Änderung der Streuung</translation>
    </message>
    <message>
        <source>Drops of cyan on 25</source>
        <translation>Tropfen Cyan auf 25</translation>
    </message>
    <message>
        <source>Drops of magenta on 25</source>
        <translation>Tropfen Magenta auf 25</translation>
    </message>
    <message>
        <source>Drops of yellow on 25</source>
        <translation>Tropfen Gelb auf 25</translation>
    </message>
    <message>
        <source>Absorbs red, per drop</source>
        <translation>Absorbiert Rot, je Tropfen</translation>
    </message>
    <message>
        <source>Absorbs green, per drop</source>
        <translation>Absorbiert Grün, je Tropfen</translation>
    </message>
    <message>
        <source>Absorbs blue, per drop</source>
        <translation>Absorbiert Blau, je Tropfen</translation>
    </message>
    <message>
        <source>Starts at, °C</source>
        <translation>Beginnt bei, °C</translation>
    </message>
    <message>
        <source>Factor on scattering</source>
        <translation>Faktor auf die Streuung</translation>
    </message>
    <message>
        <source>Dries by itself, min</source>
        <translation>Trocknet selbst, min</translation>
    </message>
    <message>
        <source>dried elsewhere</source>
        <translation>anderswo getrocknet</translation>
    </message>
    <message>
        <source>Reflectance at short waves</source>
        <translation>Reflexion bei kurzen Wellen</translation>
    </message>
    <message>
        <source>Rise towards long waves</source>
        <translation>Anstieg zu langen Wellen</translation>
    </message>
    <message>
        <source>Half risen at, nm</source>
        <translation>Halb angestiegen bei, nm</translation>
    </message>
    <message>
        <source>Width of the rise, nm</source>
        <translation>Breite des Anstiegs, nm</translation>
    </message>
    <message>
        <source>Absorption, 1/mm</source>
        <translation>Absorption, 1/mm</translation>
    </message>
    <message>
        <source>Scattering, 1/mm</source>
        <translation>Streuung, 1/mm</translation>
    </message>
    <message>
        <source>Wets both sides</source>
        <translation>Benetzt beide Seiten</translation>
    </message>
    <message>
        <source>layer</source>
        <translation>Schicht</translation>
    </message>
    <message>
        <source>layers</source>
        <translation>Schichten</translation>
    </message>
    <message>
        <source>Bottom, mm milled</source>
        <translation>Unterkante, mm gefräst</translation>
    </message>
    <message>
        <source>Class of zirconia</source>
        <translation>Zirkonoxidklasse</translation>
    </message>
    <message>
        <source>Nominal L*</source>
        <translation>Nenn-L*</translation>
    </message>
    <message>
        <source>Nominal a*</source>
        <translation>Nenn-a*</translation>
    </message>
    <message>
        <source>Nominal b*</source>
        <translation>Nenn-b*</translation>
    </message>
    <message>
        <source>of a plate, mm</source>
        <translation>einer Platte, mm</translation>
    </message>
    <message>
        <source>over</source>
        <translation>über</translation>
    </message>
    <message>
        <source>Absorption at 400 nm, 1/mm</source>
        <translation>Absorption bei 400 nm, 1/mm</translation>
    </message>
    <message>
        <source>falls to 1/e within, nm</source>
        <translation>fällt auf 1/e in, nm</translation>
    </message>
    <message>
        <source>on top of, 1/mm</source>
        <translation>zuzüglich, 1/mm</translation>
    </message>
    <message>
        <source>ion</source>
        <translation>Ion</translation>
    </message>
    <message>
        <source>ions</source>
        <translation>Ionen</translation>
    </message>
    <message>
        <source>Ion</source>
        <translation>Ion</translation>
    </message>
    <message>
        <source>At full load, 1/mm</source>
        <translation>Bei voller Beladung, 1/mm</translation>
    </message>
    <message>
        <source>band</source>
        <translation>Bande</translation>
    </message>
    <message>
        <source>bands</source>
        <translation>Banden</translation>
    </message>
    <message>
        <source>Centre, nm</source>
        <translation>Mitte, nm</translation>
    </message>
    <message>
        <source>Standard deviation, nm</source>
        <translation>Standardabweichung, nm</translation>
    </message>
    <message>
        <source>Strength</source>
        <translation>Stärke</translation>
    </message>
    <message>
        <source>piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>pieces</source>
        <translation>Stücke</translation>
    </message>
    <message>
        <source>To, °C</source>
        <translation>Auf, °C</translation>
    </message>
    <message>
        <source>within, min</source>
        <translation>in, min</translation>
    </message>
    <message>
        <source>It has {count} {words}, and no more can be had.</source>
        <translation>Es hat {count} {words}, und mehr sind nicht möglich.</translation>
    </message>
    <message>
        <source>It holds every ion there is.</source>
        <translation>Es enthält jedes Ion, das es gibt.</translation>
    </message>
    <message>
        <source>It needs at least {least} {words}.</source>
        <translation>Es braucht mindestens {least} {words}.</translation>
    </message>
    <message>
        <source>Jars hold drops of three dyes, so there is no fourth.</source>
        <translation>Näpfe fassen Tropfen von drei Farbstoffen, darum gibt es keinen vierten.</translation>
    </message>
    <message>
        <source>Copy one of the three to give it your own numbers.</source>
        <translation>Kopieren Sie einen der drei, um ihm eigene Zahlen zu geben.</translation>
    </message>
    <message>
        <source>There is no {kind} to begin with.</source>
        <translation>Es gibt nichts dieser Art ({kind}), womit zu beginnen wäre.</translation>
    </message>
    <message>
        <source>Import one.</source>
        <translation>Importieren Sie etwas.</translation>
    </message>
    <message>
        <source>The ion &apos;{twice}&apos; is there twice.</source>
        <translation>Das Ion „{twice}“ steht zweimal da.</translation>
    </message>
    <message>
        <source>Choose another.</source>
        <translation>Wählen Sie eine andere.</translation>
    </message>
    <message>
        <source>{words} is &apos;{text}&apos;.</source>
        <translation>{words} ist „{text}“.</translation>
    </message>
    <message>
        <source>Expected is one of: {known}.</source>
        <translation>Erwartet wird eines von: {known}.</translation>
    </message>
    <message>
        <source>{words} is &apos;{text}&apos;, which is no number.</source>
        <translation>{words} ist „{text}“, das ist keine Zahl.</translation>
    </message>
    <message>
        <source>Expected is {expected}.</source>
        <translation>Erwartet: {expected}.</translation>
    </message>
    <message>
        <source>{words} is {value:g}.</source>
        <translation>{words} ist {value:g}.</translation>
    </message>
</context>
<context>
    <name>materials list</name>
    <message>
        <source>The laboratory&apos;s own</source>
        <translation>Die des Labors</translation>
    </message>
    <message>
        <source>Comes with the program: copy it to change it</source>
        <translation>Mit dem Programm geliefert: zum Ändern kopieren</translation>
    </message>
    <message>
        <source>Only in the open case</source>
        <translation>Nur im offenen Fall</translation>
    </message>
    <message>
        <source>the laboratory&apos;s own</source>
        <translation>aus dem Labor</translation>
    </message>
    <message>
        <source>comes with the program</source>
        <translation>mit dem Programm geliefert</translation>
    </message>
    <message>
        <source>only in the open case</source>
        <translation>nur im offenen Fall</translation>
    </message>
    <message>
        <source>Materials</source>
        <translation>Materialien</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Numbers</source>
        <translation>Zahlen</translation>
    </message>
    <message>
        <source>Case</source>
        <translation>Fall</translation>
    </message>
    <message>
        <source>changed, not kept yet</source>
        <translation>geändert, noch nicht behalten</translation>
    </message>
</context>
<context>
    <name>materials plot</name>
    <message>
        <source>Plot</source>
        <translation>Diagramm</translation>
    </message>
    <message>
        <source>Plot: {title}</source>
        <translation>Diagramm: {title}</translation>
    </message>
    <message>
        <source>{title}: colours for {words}.</source>
        <translation>{title}: Farben für {words}.</translation>
    </message>
    <message>
        <source>{name}: from {first:.3g} at {begin:.3g} to {last:.3g} at {end:.3g}, highest {most:.3g} at {place:.3g}.</source>
        <translation>{name}: von {first:.3g} bei {begin:.3g} bis {last:.3g} bei {end:.3g}, am höchsten {most:.3g} bei {place:.3g}.</translation>
    </message>
    <message>
        <source>{title}, {up} over {across}. {said}</source>
        <translation>{title}, {up} über {across}. {said}</translation>
    </message>
</context>
<context>
    <name>materials set</name>
    <message>
        <source>The {kind} &apos;{name}&apos; comes with the program and stays as it is.</source>
        <translation>„{name}“ ({kind}) kommt mit dem Programm und bleibt, wie es ist.</translation>
    </message>
    <message>
        <source>Copy it, and change the copy.</source>
        <translation>Kopieren Sie es, und ändern Sie die Kopie.</translation>
    </message>
    <message>
        <source>Jars hold drops of three dyes, and &apos;{name}&apos; is none of them.</source>
        <translation>Näpfe fassen Tropfen von drei Farbstoffen, und „{name}“ ist keiner davon.</translation>
    </message>
    <message>
        <source>Copy one of the three to give it your own numbers.</source>
        <translation>Kopieren Sie einen der drei, um ihm eigene Zahlen zu geben.</translation>
    </message>
    <message>
        <source>The three dyes keep their names, which jars and sheets refer to.</source>
        <translation>Die drei Farbstoffe behalten ihre Namen, auf die sich Näpfe und Blätter beziehen.</translation>
    </message>
    <message>
        <source>Change the numbers instead.</source>
        <translation>Ändern Sie stattdessen die Zahlen.</translation>
    </message>
    <message>
        <source>There already is a {kind} called &apos;{new}&apos;.</source>
        <translation>„{new}“ ({kind}) gibt es schon.</translation>
    </message>
    <message>
        <source>Choose another name.</source>
        <translation>Wählen Sie einen anderen Namen.</translation>
    </message>
    <message>
        <source>The {kind} &apos;{name}&apos; is none of the laboratory&apos;s set.</source>
        <translation>{kind} „{name}“ ist nicht unter den Materialien des Labors.</translation>
    </message>
    <message>
        <source>What comes with the program stays as it is; copy it to change it.</source>
        <translation>Was mit dem Programm kommt, bleibt, wie es ist; kopieren Sie es, um es zu ändern.</translation>
    </message>
    <message>
        <source>The {kind} &apos;{name}&apos; is needed: {where} refers to it.</source>
        <translation>„{name}“ ({kind}) wird gebraucht: {where} bezieht sich darauf.</translation>
    </message>
    <message>
        <source>Change that one first.</source>
        <translation>Ändern Sie das zuerst.</translation>
    </message>
    <message>
        <source>it cannot be used: {error}</source>
        <translation>sie nicht verwendet werden kann: {error}</translation>
    </message>
    <message>
        <source>something in it cannot be used: {problem}</source>
        <translation>etwas darin nicht verwendet werden kann: {problem}</translation>
    </message>
    <message>
        <source>The laboratory&apos;s materials {path} are left alone, because {why} What you change holds until the program ends; move the file away to keep changes again. {reason}</source>
        <translation>Die Materialien des Labors {path} bleiben unberührt, weil {why} Was Sie ändern, gilt, bis das Programm endet; verschieben Sie die Datei, um Änderungen wieder aufzubewahren. {reason}</translation>
    </message>
    <message>
        <source>The laboratory&apos;s materials were not read as they are, because {why} All other entries hold; the file as it was is kept as {kept}.</source>
        <translation>Die Materialien des Labors wurden nicht gelesen, wie sie sind, weil {why} Alle anderen Einträge gelten; die Datei, wie sie war, ist als {kept} aufbewahrt.</translation>
    </message>
    <message>
        <source>Changes cannot be written. {error}</source>
        <translation>Änderungen können nicht geschrieben werden. {error}</translation>
    </message>
    <message>
        <source>The {kind} has no name.</source>
        <translation>Der Eintrag ({kind}) hat keinen Namen.</translation>
    </message>
    <message>
        <source>Give it one.</source>
        <translation>Geben Sie ihm einen.</translation>
    </message>
    <message>
        <source>The name of the {kind} is too long, or has signs that cannot be printed.</source>
        <translation>Der Name des Eintrags ({kind}) ist zu lang oder hat nicht druckbare Zeichen.</translation>
    </message>
    <message>
        <source>Give at most {most} letters on one line.</source>
        <translation>Geben Sie höchstens {most} Buchstaben in einer Zeile an.</translation>
    </message>
    <message>
        <source>Give the entry the name of the dye whose place it takes.</source>
        <translation>Geben Sie dem Eintrag den Namen des Farbstoffs, dessen Platz er einnimmt.</translation>
    </message>
    <message>
        <source>There already is a {kind} called &apos;{name}&apos;, with other numbers.</source>
        <translation>„{name}“ ({kind}) gibt es schon, mit anderen Zahlen.</translation>
    </message>
    <message>
        <source>Give one of the two another name.</source>
        <translation>Geben Sie einem der beiden einen anderen Namen.</translation>
    </message>
</context>
<context>
    <name>materials solving</name>
    <message>
        <source>Layer {number} cannot have this colour: the nearest it can have is {colour}, dE00 {remaining_de00:.1f} away.</source>
        <translation>Schicht {number} kann diese Farbe nicht haben: Am nächsten kommt {colour}, dE00 {remaining_de00:.1f} entfernt.</translation>
    </message>
    <message>
        <source>Layer {number} reaches {colour}, dE00 {remaining_de00:.1f} from what was given: it absorbs {c0_per_mm:.3g} 1/mm at 400 nm, falling to 1/e within {decay_nm:.0f} nm, on top of {c1_per_mm:.2g} 1/mm.</source>
        <translation>Schicht {number} erreicht {colour}, dE00 {remaining_de00:.1f} von der Angabe: Sie absorbiert {c0_per_mm:.3g} 1/mm bei 400 nm, fallend auf 1/e in {decay_nm:.0f} nm, zuzüglich {c1_per_mm:.2g} 1/mm.</translation>
    </message>
</context>
<context>
    <name>materials spectra</name>
    <message>
        <source>Its colour is for {geometry}.</source>
        <translation>Seine Farbe gilt für {geometry}.</translation>
    </message>
    <message>
        <source>Layer {layer} has the colour L* {lightness:.1f}, a* {a:.1f}, b* {b:.1f} of the spectrum ({way}), as of a plate of {nominal_thickness_mm:g} mm.</source>
        <translation>Schicht {layer} hat die Farbe L* {lightness:.1f}, a* {a:.1f}, b* {b:.1f} des Spektrums ({way}), als Platte von {nominal_thickness_mm:g} mm.</translation>
    </message>
    <message>
        <source>1/mm of absorption</source>
        <translation>1/mm Absorption</translation>
    </message>
    <message>
        <source>There are no ions to describe it by.</source>
        <translation>Es gibt keine Ionen, um es zu beschreiben.</translation>
    </message>
    <message>
        <source>Import some.</source>
        <translation>Importieren Sie welche.</translation>
    </message>
    <message>
        <source>of reflectance</source>
        <translation>Reflexion</translation>
    </message>
    <message>
        <source>The spectrum is described to within {away:.2g} {unit}, furthest at {bands_nm:.0f} nm; look at the plot before you keep it.</source>
        <translation>Das Spektrum ist auf {away:.2g} {unit} genau beschrieben, am weitesten daneben bei {bands_nm:.0f} nm; sehen Sie das Diagramm an, bevor Sie es behalten.</translation>
    </message>
    <message>
        <source>No such spectrum belongs to it.</source>
        <translation>Ein solches Spektrum gehört nicht dazu.</translation>
    </message>
    <message>
        <source>Blocks and stumps have reflectance, blocks and liquids absorption.</source>
        <translation>Rohlinge und Stümpfe haben Reflexion, Rohlinge und Flüssigkeiten Absorption.</translation>
    </message>
</context>
<context>
    <name>materials tables</name>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>Choose</source>
        <translation>Wählen</translation>
    </message>
</context>
<context>
    <name>materials window</name>
    <message>
        <source>The laboratory&apos;s set is kept on this computer, for all cases. A case carries its own copy of materials, so that its plan stays what it was: undo takes back what the case holds, not what the set holds.</source>
        <translation>Der Bestand des Labors liegt auf diesem Rechner, für alle Fälle. Ein Fall trägt seine eigene Kopie der Materialien, damit sein Plan bleibt, was er war: Rückgängig nimmt zurück, was der Fall enthält, nicht den Bestand.</translation>
    </message>
    <message>
        <source>Materials</source>
        <translation>Materialien</translation>
    </message>
    <message>
        <source>Kinds of material</source>
        <translation>Arten von Material</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Rename...</source>
        <translation>Umbenennen...</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Import...</source>
        <translation>Importieren...</translation>
    </message>
    <message>
        <source>Export...</source>
        <translation>Exportieren...</translation>
    </message>
    <message>
        <source>Materials of another file (TOML) come into the set</source>
        <translation>Materialien einer anderen Datei (TOML) kommen in den Bestand</translation>
    </message>
    <message>
        <source>Write the chosen entries as a materials file (TOML)</source>
        <translation>Die gewählten Einträge als Materialdatei (TOML) schreiben</translation>
    </message>
</context>
<context>
    <name>measured spectrum</name>
    <message>
        <source>It has {count} wavelengths and {count_2} values.</source>
        <translation>Es hat {count} Wellenlängen und {count_2} Werte.</translation>
    </message>
    <message>
        <source>Give one value per wavelength.</source>
        <translation>Geben Sie einen Wert je Wellenlänge an.</translation>
    </message>
    <message>
        <source>It holds no numbers.</source>
        <translation>Es enthält keine Zahlen.</translation>
    </message>
    <message>
        <source>Give wavelength and value on each line.</source>
        <translation>Geben Sie in jeder Zeile Wellenlänge und Wert an.</translation>
    </message>
    <message>
        <source>It cannot be read: {value}.</source>
        <translation>Es kann nicht gelesen werden: {value}.</translation>
    </message>
    <message>
        <source>Check name and permissions.</source>
        <translation>Prüfen Sie Namen und Rechte.</translation>
    </message>
    <message>
        <source>It is not a text file.</source>
        <translation>Das ist keine Textdatei.</translation>
    </message>
    <message>
        <source>Export the spectrum as CSV.</source>
        <translation>Exportieren Sie das Spektrum als CSV.</translation>
    </message>
    <message>
        <source>Line {number} is &apos;{shown}&apos;.</source>
        <translation>Zeile {number} ist „{shown}“.</translation>
    </message>
    <message>
        <source>Expected are two numbers, wavelength in nm and value.</source>
        <translation>Erwartet werden zwei Zahlen, Wellenlänge in nm und Wert.</translation>
    </message>
    <message>
        <source>It has more than {most_samples} samples.</source>
        <translation>Es hat mehr als {most_samples} Werte.</translation>
    </message>
    <message>
        <source>Expected is one spectrum.</source>
        <translation>Erwartet wird ein Spektrum.</translation>
    </message>
    <message>
        <source>It has the shape {shape}.</source>
        <translation>Es hat die Form {shape}.</translation>
    </message>
    <message>
        <source>Expected are two lists of equal length.</source>
        <translation>Erwartet werden zwei gleich lange Listen.</translation>
    </message>
    <message>
        <source>Wavelength {number} is {value}.</source>
        <translation>Wellenlänge {number} ist {value}.</translation>
    </message>
    <message>
        <source>Expected is a number in nm.</source>
        <translation>Erwartet wird eine Zahl in nm.</translation>
    </message>
    <message>
        <source>Its wavelengths run from {min:g} to {max:g}, which looks like micrometres.</source>
        <translation>Seine Wellenlängen reichen von {min:g} bis {max:g}, das sieht nach Mikrometern aus.</translation>
    </message>
    <message>
        <source>Give them in nm, as 400 to 700.</source>
        <translation>Geben Sie sie in nm an, etwa 400 bis 700.</translation>
    </message>
    <message>
        <source>Wavelength {number} is {value:g} nm and follows {before:g} nm.</source>
        <translation>Wellenlänge {number} ist {value:g} nm und folgt auf {before:g} nm.</translation>
    </message>
    <message>
        <source>Expected are rising wavelengths, each once.</source>
        <translation>Erwartet werden steigende Wellenlängen, jede einmal.</translation>
    </message>
    <message>
        <source>There is a gap between {low:g} and {high:g} nm.</source>
        <translation>Zwischen {low:g} und {high:g} nm ist eine Lücke.</translation>
    </message>
    <message>
        <source>Expected are steps of at most {widest:g} nm.</source>
        <translation>Erwartet werden Schritte von höchstens {widest:g} nm.</translation>
    </message>
    <message>
        <source>It runs from {grid:g} to {grid_2:g} nm.</source>
        <translation>Es reicht von {grid:g} bis {grid_2:g} nm.</translation>
    </message>
    <message>
        <source>Expected are {bands_nm:g} to {bands_nm_2:g} nm or more.</source>
        <translation>Erwartet werden {bands_nm:g} bis {bands_nm_2:g} nm oder mehr.</translation>
    </message>
    <message>
        <source>The {kind} at {grid:g} nm is {value:g}.</source>
        <translation>Bei {grid:g} nm ist der Wert {value:g} ({kind}).</translation>
    </message>
    <message>
        <source>Expected are 0 to {limit:g}.</source>
        <translation>Erwartet wird 0 bis {limit:g}.</translation>
    </message>
    <message>
        <source>The {value} at {grid:g} nm is {values:g}, which looks like percent.</source>
        <translation>{value} bei {grid:g} nm ist {values:g}, das sieht nach Prozent aus.</translation>
    </message>
</context>
<context>
    <name>menu</name>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>&amp;Crown</source>
        <translation>&amp;Krone</translation>
    </message>
    <message>
        <source>&amp;Plan</source>
        <translation>&amp;Plan</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>P&amp;ractice</source>
        <translation>&amp;Übung</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;Open...</source>
        <translation>Ö&amp;ffnen...</translation>
    </message>
    <message>
        <source>Open &amp;recent</source>
        <translation>Zu&amp;letzt geöffnet</translation>
    </message>
    <message>
        <source>Open the sa&amp;mple</source>
        <translation>&amp;Musterfall öffnen</translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Speichern</translation>
    </message>
    <message>
        <source>Save &amp;as...</source>
        <translation>Speichern &amp;unter...</translation>
    </message>
    <message>
        <source>&amp;Export...</source>
        <translation>&amp;Exportieren...</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Export</translation>
    </message>
    <message>
        <source>&amp;Print sheets...</source>
        <translation>Blätter &amp;drucken...</translation>
    </message>
    <message>
        <source>Sheets</source>
        <translation>Blätter</translation>
    </message>
    <message>
        <source>Save s&amp;heets (A4)...</source>
        <translation>Blätter s&amp;ichern (A4)...</translation>
    </message>
    <message>
        <source>Save sheets (&amp;Letter)...</source>
        <translation>Blätter si&amp;chern (Letter)...</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Beenden</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Rückgängig</translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation>&amp;Wiederholen</translation>
    </message>
    <message>
        <source>Cu&amp;t coats</source>
        <translation>Aufträge &amp;ausschneiden</translation>
    </message>
    <message>
        <source>&amp;Copy coats</source>
        <translation>Aufträge &amp;kopieren</translation>
    </message>
    <message>
        <source>Copy coats with &amp;names</source>
        <translation>Aufträge mit &amp;Namen kopieren</translation>
    </message>
    <message>
        <source>&amp;Paste coats</source>
        <translation>Aufträge &amp;einfügen</translation>
    </message>
    <message>
        <source>Se&amp;ttings...</source>
        <translation>Ein&amp;stellungen...</translation>
    </message>
    <message>
        <source>Say what is &amp;wanted...</source>
        <translation>Gewünschte &amp;Farbe...</translation>
    </message>
    <message>
        <source>&amp;Tooth and roles...</source>
        <translation>&amp;Zahn und Rollen...</translation>
    </message>
    <message>
        <source>Say where &amp;mesial is...</source>
        <translation>Zeigen, wo &amp;mesial ist...</translation>
    </message>
    <message>
        <source>Say which side &amp;bites...</source>
        <translation>Zeigen, welche Seite &amp;kaut...</translation>
    </message>
    <message>
        <source>Wall where there is no &amp;inner surface...</source>
        <translation>Wand, wo keine &amp;Innenfläche ist...</translation>
    </message>
    <message>
        <source>&amp;How it was read...</source>
        <translation>&amp;Wie sie gelesen wurde...</translation>
    </message>
    <message>
        <source>What was &amp;noticed...</source>
        <translation>Was &amp;bemerkt wurde...</translation>
    </message>
    <message>
        <source>&amp;Cut off the crown...</source>
        <translation>Krone ab&amp;schneiden...</translation>
    </message>
    <message>
        <source>&amp;Propose zones again</source>
        <translation>Zonen neu &amp;vorschlagen</translation>
    </message>
    <message>
        <source>How &amp;far zones reach...</source>
        <translation>Wie weit Zonen &amp;reichen...</translation>
    </message>
    <message>
        <source>Brush moves the ma&amp;rgin</source>
        <translation>&amp;Pinsel verschiebt den Kronenrand</translation>
    </message>
    <message>
        <source>&amp;Intake...</source>
        <translation>Fall&amp;aufnahme...</translation>
    </message>
    <message>
        <source>Suggest coats...</source>
        <translation>Aufträge vorschlagen...</translation>
    </message>
    <message>
        <source>Co&amp;mpare plans...</source>
        <translation>&amp;Pläne vergleichen...</translation>
    </message>
    <message>
        <source>&amp;Film of the plan</source>
        <translation>&amp;Film des Plans</translation>
    </message>
    <message>
        <source>&amp;Hand and uptake...</source>
        <translation>&amp;Hand und Flüssigkeitsaufnahme...</translation>
    </message>
    <message>
        <source>What &amp;lies behind...</source>
        <translation>Was &amp;dahinter liegt...</translation>
    </message>
    <message>
        <source>H&amp;eight in the block...</source>
        <translation>Höhe im &amp;Rohling...</translation>
    </message>
    <message>
        <source>Show where a &amp;screw leaves...</source>
        <translation>Austritt einer &amp;Schraube zeigen...</translation>
    </message>
    <message>
        <source>&amp;Take the screw channel away</source>
        <translation>Schrauben&amp;kanal wegnehmen</translation>
    </message>
    <message>
        <source>&amp;Mix...</source>
        <translation>&amp;Mischen...</translation>
    </message>
    <message>
        <source>Compare &amp;furnaces...</source>
        <translation>Öfen &amp;vergleichen...</translation>
    </message>
    <message>
        <source>&amp;Blank coupon...</source>
        <translation>&amp;Ungefärbtes Plättchen...</translation>
    </message>
    <message>
        <source>&amp;After sintering...</source>
        <translation>&amp;Nach dem Sintern...</translation>
    </message>
    <message>
        <source>Accent &amp;over connectors</source>
        <translation>Akzent über die V&amp;erbinder</translation>
    </message>
    <message>
        <source>State on the benc&amp;h...</source>
        <translation>S&amp;tand der Arbeit...</translation>
    </message>
    <message>
        <source>T&amp;ray and its sheets...</source>
        <translation>Ta&amp;blett und seine Blätter...</translation>
    </message>
    <message>
        <source>Materials...</source>
        <translation>Materialien...</translation>
    </message>
    <message>
        <source>Look &amp;from</source>
        <translation>Blick &amp;von</translation>
    </message>
    <message>
        <source>&amp;Whole crown</source>
        <translation>&amp;Ganze Krone</translation>
    </message>
    <message>
        <source>&amp;Flat views</source>
        <translation>&amp;Flache Ansichten</translation>
    </message>
    <message>
        <source>Under all &amp;lights...</source>
        <translation>Unter allen &amp;Lichtarten...</translation>
    </message>
    <message>
        <source>Check this &amp;point</source>
        <translation>Diese Stelle &amp;prüfen</translation>
    </message>
    <message>
        <source>&amp;Section here...</source>
        <translation>&amp;Schnitt hier...</translation>
    </message>
    <message>
        <source>&amp;Before the last step</source>
        <translation>Vor dem letzten S&amp;chritt</translation>
    </message>
    <message>
        <source>The bare bloc&amp;k</source>
        <translation>Der ungefär&amp;bte Rohling</translation>
    </message>
    <message>
        <source>Correct for c&amp;urvature</source>
        <translation>&amp;Krümmung berücksichtigen</translation>
    </message>
    <message>
        <source>&amp;Next part of the window</source>
        <translation>&amp;Nächster Teil des Fensters</translation>
    </message>
    <message>
        <source>Part of the window &amp;before</source>
        <translation>&amp;Teil des Fensters davor</translation>
    </message>
    <message>
        <source>&amp;Colours of the window</source>
        <translation>Fa&amp;rben des Fensters</translation>
    </message>
    <message>
        <source>&amp;New practice...</source>
        <translation>&amp;Neue Übung...</translation>
    </message>
    <message>
        <source>&amp;Slips of this plan...</source>
        <translation>&amp;Fehlgriffe bei diesem Plan...</translation>
    </message>
    <message>
        <source>&amp;Manual</source>
        <translation>&amp;Handbuch</translation>
    </message>
    <message>
        <source>&amp;Keys and mouse</source>
        <translation>&amp;Tasten und Maus</translation>
    </message>
    <message>
        <source>&amp;Guided first plan</source>
        <translation>&amp;Geführter erster Plan</translation>
    </message>
    <message>
        <source>&amp;Cautions</source>
        <translation>&amp;Warnhinweise</translation>
    </message>
    <message>
        <source>Check the &amp;display...</source>
        <translation>Bild&amp;schirm prüfen...</translation>
    </message>
    <message>
        <source>&amp;Evidence</source>
        <translation>Be&amp;lege</translation>
    </message>
    <message>
        <source>&amp;About stainmap</source>
        <translation>Ü&amp;ber stainmap</translation>
    </message>
    <message>
        <source>&amp;Undo {step}</source>
        <translation>&amp;Rückgängig: {step}</translation>
    </message>
    <message>
        <source>&amp;Redo {step}</source>
        <translation>&amp;Wiederholen: {step}</translation>
    </message>
</context>
<context>
    <name>mesh export</name>
    <message>
        <source>STL has no place for colours.</source>
        <translation>STL hat keinen Platz für Farben.</translation>
    </message>
    <message>
        <source>&apos;{ending}&apos; is not written.</source>
        <translation>„{ending}“ wird nicht geschrieben.</translation>
    </message>
    <message>
        <source>Use {mesh_kinds}.</source>
        <translation>Nehmen Sie {mesh_kinds}.</translation>
    </message>
</context>
<context>
    <name>mirrored</name>
    <message>
        <source>Which side is mesial is not known, so there is nothing to mirror by.</source>
        <translation>Welche Seite mesial ist, ist nicht bekannt, darum gibt es nichts zum Spiegeln.</translation>
    </message>
    <message>
        <source>Say where mesial is (menu Crown) first.</source>
        <translation>Zeigen Sie zuerst, wo mesial ist (Menü Krone).</translation>
    </message>
</context>
<context>
    <name>mixing</name>
    <message>
        <source>Jar {number}: {drops} drops of dye on {liquid} of liquid; usual are {low} to {high}.</source>
        <translation>Napf {number}: {drops} Tropfen Farbstoff auf {liquid} Tropfen Flüssigkeit; üblich sind {low} bis {high}.</translation>
    </message>
    <message>
        <source>Jar {number}: its {colour} dye looks like what {liquid} does after sintering.</source>
        <translation>Napf {number}: Sein Farbstoff ({colour}) sieht aus wie das, was {liquid} nach dem Sintern macht.</translation>
    </message>
    <message>
        <source>Jar {number}: {share:.0%} of dye, more than {most:.0%}; it thins the liquid, and every coat counts {dilution:.0%} (the prediction has it in).</source>
        <translation>Napf {number}: {share:.0%} Farbstoff, mehr als {most:.0%}; er verdünnt die Flüssigkeit, und jeder Auftrag zählt {dilution:.0%} (die Vorhersage enthält es).</translation>
    </message>
    <message>
        <source>These jars look alike on chalk: {pairs}. Go by number and hatch.</source>
        <translation>Diese Näpfe sehen auf Kreide gleich aus: {pairs}. Richten Sie sich nach Nummer und Schraffur.</translation>
    </message>
    <message>
        <source>These jars look alike on chalk to some colour-blind eyes: {pairs}. Go by number and hatch.</source>
        <translation>Diese Näpfe sehen auf Kreide für manche farbenblinden Augen gleich aus: {pairs}. Richten Sie sich nach Nummer und Schraffur.</translation>
    </message>
</context>
<context>
    <name>mixing dialog</name>
    <message>
        <source>Mix</source>
        <translation>Mischen</translation>
    </message>
    <message>
        <source>A jar is {drops} drops of liquid with 2 to 3 of dye (common practice). Mixed jars are kept {hours:g} h at most (assumed); no liquid goes back into its bottle.</source>
        <translation>Ein Napf sind {drops} Tropfen Flüssigkeit mit 2 bis 3 Tropfen Farbstoff (übliche Praxis). Gemischte Näpfe werden höchstens {hours:g} h aufbewahrt (angenommen); keine Flüssigkeit kommt in ihre Flasche zurück.</translation>
    </message>
    <message>
        <source>Drops in 1 mL</source>
        <translation>Tropfen in 1 mL</translation>
    </message>
    <message>
        <source>Film per coat</source>
        <translation>Film je Auftrag</translation>
    </message>
    <message>
        <source>Drops left in the jar</source>
        <translation>Im Napf bleibende Tropfen</translation>
    </message>
    <message>
        <source>assumed until counted or measured</source>
        <translation>angenommen, bis gezählt oder gemessen</translation>
    </message>
    <message>
        <source>Drops in 1 mL (count them)</source>
        <translation>Tropfen in 1 mL (zählen Sie sie)</translation>
    </message>
    <message>
        <source>Film per coat, µm, on the milled surface</source>
        <translation>Film je Auftrag, µm, auf der gefrästen Fläche</translation>
    </message>
    <message>
        <source>Drops that stay in jar and brush</source>
        <translation>Tropfen, die in Napf und Pinsel bleiben</translation>
    </message>
    <message>
        <source>Take the drop of the settings ({drops:.1f} in 1 mL)</source>
        <translation>Tropfen der Einstellungen nehmen ({drops:.1f} in 1 mL)</translation>
    </message>
    <message>
        <source>Dyes that tell jars apart</source>
        <translation>Farbstoffe, die Näpfe unterscheiden</translation>
    </message>
    <message>
        <source>Smallest jars</source>
        <translation>Kleinste Näpfe</translation>
    </message>
    <message>
        <source>Jars of {drops} drops</source>
        <translation>Näpfe mit {drops} Tropfen</translation>
    </message>
    <message>
        <source>The fewest whole drops of the same ratios that last</source>
        <translation>Die wenigsten ganzen Tropfen im selben Verhältnis, die reichen</translation>
    </message>
    <message>
        <source>On chalk the jars differ by dE00 {least:.0f} or more, to colour-blind eyes by {blind:.0f}.</source>
        <translation>Auf Kreide unterscheiden sich die Näpfe um dE00 {least:.0f} oder mehr, für farbenblinde Augen um {blind:.0f}.</translation>
    </message>
    <message>
        <source>No jar is on the tray yet.</source>
        <translation>Noch steht kein Napf auf dem Tablett.</translation>
    </message>
</context>
<context>
    <name>open card</name>
    <message>
        <source>millimetres</source>
        <translation>Millimeter</translation>
    </message>
    <message>
        <source>centimetres</source>
        <translation>Zentimeter</translation>
    </message>
    <message>
        <source>metres</source>
        <translation>Meter</translation>
    </message>
    <message>
        <source>micrometres</source>
        <translation>Mikrometer</translation>
    </message>
    <message>
        <source>inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>&apos;{word}&apos; is not a tooth number.</source>
        <translation>„{word}“ ist keine Zahnnummer.</translation>
    </message>
    <message>
        <source>Give two digits, as in 46.</source>
        <translation>Geben Sie zwei Ziffern an, etwa 46.</translation>
    </message>
    <message>
        <source>A tooth is named twice.</source>
        <translation>Ein Zahn ist zweimal genannt.</translation>
    </message>
    <message>
        <source>Questions about the mesh</source>
        <translation>Fragen zum Netz</translation>
    </message>
    <message>
        <source>milled</source>
        <translation>gefräst</translation>
    </message>
    <message>
        <source>sintered</source>
        <translation>gesintert</translation>
    </message>
    <message>
        <source>Read the crown</source>
        <translation>Krone lesen</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>46, or 14 15 16 for a bridge</source>
        <translation>46, oder 14 15 16 für eine Brücke</translation>
    </message>
    <message>
        <source>Tooth numbers, ISO 3950</source>
        <translation>Zahnnummern nach ISO 3950</translation>
    </message>
    <message>
        <source>Unit of the file</source>
        <translation>Einheit der Datei</translation>
    </message>
    <message>
        <source>Block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>Tooth</source>
        <translation>Zahn</translation>
    </message>
    <message>
        <source>File in</source>
        <translation>Datei in</translation>
    </message>
    <message>
        <source>Size is</source>
        <translation>Größe ist</translation>
    </message>
    <message>
        <source>and {count} more notes</source>
        <translation>und {count} weitere Bemerkungen</translation>
    </message>
    <message>
        <source>{unit}, no crown&apos;s size</source>
        <translation>{unit}, keine Kronengröße</translation>
    </message>
    <message>
        <source>Which tooth is it?</source>
        <translation>Welcher Zahn ist es?</translation>
    </message>
    <message>
        <source>Is the mesh as milled, about a quarter oversize, or as sintered?</source>
        <translation>Ist das Netz wie gefräst, etwa ein Viertel größer, oder wie gesintert?</translation>
    </message>
</context>
<context>
    <name>opening</name>
    <message>
        <source>reading the file</source>
        <translation>die Datei wird gelesen</translation>
    </message>
    <message>
        <source>checking its size</source>
        <translation>ihre Größe wird geprüft</translation>
    </message>
    <message>
        <source>No tooth is named.</source>
        <translation>Kein Zahn ist genannt.</translation>
    </message>
    <message>
        <source>Give its number by ISO 3950, as in 46.</source>
        <translation>Geben Sie seine Nummer nach ISO 3950 an, etwa 46.</translation>
    </message>
    <message>
        <source>A tooth is named twice.</source>
        <translation>Ein Zahn ist zweimal genannt.</translation>
    </message>
    <message>
        <source>A body of {extent} is no crown in any unit.</source>
        <translation>Ein Körper von {extent} ist in keiner Einheit eine Krone.</translation>
    </message>
    <message>
        <source>Say the unit of the file, or export it again.</source>
        <translation>Nennen Sie die Einheit der Datei, oder exportieren Sie sie neu.</translation>
    </message>
    <message>
        <source>In the unit {value} it is {longest_mm:,.0f} mm long, larger than any jaw.</source>
        <translation>In der Einheit {value} ist es {longest_mm:,.0f} mm lang, größer als jeder Kiefer.</translation>
    </message>
    <message>
        <source>Say another unit, or export it again.</source>
        <translation>Nennen Sie eine andere Einheit, oder exportieren Sie sie neu.</translation>
    </message>
    <message>
        <source>refining the surface</source>
        <translation>die Oberfläche wird verfeinert</translation>
    </message>
    <message>
        <source>measuring the surface</source>
        <translation>die Oberfläche wird vermessen</translation>
    </message>
    <message>
        <source>The materials name no stump or no cement.</source>
        <translation>Die Materialien nennen keinen Stumpf oder keinen Zement.</translation>
    </message>
    <message>
        <source>The file holds {count} bodies; only the largest is taken.</source>
        <translation>Die Datei enthält {count} Körper; nur der größte wird genommen.</translation>
    </message>
    <message>
        <source>Another program is opening the lab book and does not end.</source>
        <translation>Ein anderes Programm öffnet das Laborbuch und endet nicht.</translation>
    </message>
    <message>
        <source>Close it, then do this again.</source>
        <translation>Schließen Sie es, dann versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>A newer version of the program wrote this lab book (version {version}; this one reads up to {version_2}).</source>
        <translation>Eine neuere Version des Programms hat dieses Laborbuch geschrieben (Version {version}; diese liest bis {version_2}).</translation>
    </message>
    <message>
        <source>Use that version, or name another folder for this one&apos;s data.</source>
        <translation>Nehmen Sie jene Version, oder nennen Sie einen anderen Ordner für die Daten dieser.</translation>
    </message>
    <message>
        <source>This database is no lab book.</source>
        <translation>Diese Datenbank ist kein Laborbuch.</translation>
    </message>
    <message>
        <source>Move it to another folder, then start again.</source>
        <translation>Verschieben Sie sie in einen anderen Ordner, dann starten Sie neu.</translation>
    </message>
    <message>
        <source>The lab book is damaged.</source>
        <translation>Das Laborbuch ist beschädigt.</translation>
    </message>
    <message>
        <source>The lab book cannot be kept here ({value}).</source>
        <translation>Das Laborbuch kann hier nicht geführt werden ({value}).</translation>
    </message>
    <message>
        <source>Look at the rights of the folder and whether its disk is full.</source>
        <translation>Prüfen Sie die Rechte des Ordners, und ob der Datenträger voll ist.</translation>
    </message>
</context>
<context>
    <name>opening flow</name>
    <message>
        <source>Open a mesh or a case</source>
        <translation>Netz oder Fall öffnen</translation>
    </message>
    <message>
        <source>Meshes and cases ({endings});;All files (*)</source>
        <translation>Netze und Fälle ({endings});;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Several files were dropped. Drop one, or put cases onto a tray with Ctrl+T.</source>
        <translation>Mehrere Dateien wurden abgelegt. Legen Sie eine ab, oder legen Sie Fälle mit Strg+T auf ein Tablett.</translation>
    </message>
    <message>
        <source>One file at a time</source>
        <translation>Eine Datei auf einmal</translation>
    </message>
    <message>
        <source>What was dropped does not lie on this computer. Copy it here, then drop it.</source>
        <translation>Was abgelegt wurde, liegt nicht auf diesem Rechner. Kopieren Sie es hierher, dann legen Sie es ab.</translation>
    </message>
    <message>
        <source>Not a file of this computer</source>
        <translation>Keine Datei dieses Rechners</translation>
    </message>
    <message>
        <source>Noticed when the crown was read</source>
        <translation>Beim Lesen der Krone bemerkt</translation>
    </message>
    <message>
        <source>Read-only</source>
        <translation>Nur lesen</translation>
    </message>
    <message>
        <source>{why} What you change here can only be saved under another name.</source>
        <translation>{why} Was Sie hier ändern, kann nur unter einem anderen Namen gespeichert werden.</translation>
    </message>
    <message>
        <source>Which way does it bite?</source>
        <translation>Welche Seite kaut?</translation>
    </message>
    <message>
        <source>The shape hardly tells. It is shown as it was guessed.</source>
        <translation>Die Form sagt es kaum. Gezeigt ist die Vermutung.</translation>
    </message>
    <message>
        <source>Where is mesial?</source>
        <translation>Wo ist mesial?</translation>
    </message>
    <message>
        <source>The shape does not tell, and zones on the sides go by it.</source>
        <translation>Die Form sagt es nicht, und seitliche Zonen richten sich danach.</translation>
    </message>
    <message>
        <source>No crown yet</source>
        <translation>Noch keine Krone</translation>
    </message>
    <message>
        <source>Drop a file here ({formats} or a case), or open one with Ctrl+O.</source>
        <translation>Legen Sie hier eine Datei ab ({formats} oder einen Fall), oder öffnen Sie eine mit Strg+O.</translation>
    </message>
    <message>
        <source>This did not work</source>
        <translation>Das ging nicht</translation>
    </message>
    <message>
        <source>Are these the teeth?</source>
        <translation>Sind das die Zähne?</translation>
    </message>
    <message>
        <source>If they are, the shape can be read by them.</source>
        <translation>Wenn ja, kann die Form danach gelesen werden.</translation>
    </message>
    <message>
        <source>the biting side is right</source>
        <translation>die Kauseite stimmt</translation>
    </message>
</context>
<context>
    <name>opening questions</name>
    <message>
        <source>open a mesh</source>
        <translation>Netz öffnen</translation>
    </message>
    <message>
        <source>cancel</source>
        <translation>abbrechen</translation>
    </message>
    <message>
        <source>open another</source>
        <translation>andere öffnen</translation>
    </message>
    <message>
        <source>this is the biting side</source>
        <translation>das ist die Kauseite</translation>
    </message>
    <message>
        <source>close</source>
        <translation>schließen</translation>
    </message>
    <message>
        <source>details</source>
        <translation>Einzelheiten</translation>
    </message>
    <message>
        <source>show where</source>
        <translation>zeigen, wo</translation>
    </message>
    <message>
        <source>show its biting side</source>
        <translation>Kauseite zeigen</translation>
    </message>
    <message>
        <source>it is right</source>
        <translation>es stimmt</translation>
    </message>
    <message>
        <source>show where they part</source>
        <translation>zeigen, wo sie sich trennen</translation>
    </message>
    <message>
        <source>keep to the teeth named</source>
        <translation>bei den genannten Zähnen bleiben</translation>
    </message>
    <message>
        <source>cut off the crown</source>
        <translation>Krone abschneiden</translation>
    </message>
    <message>
        <source>This is not a crown</source>
        <translation>Das ist keine Krone</translation>
    </message>
    <message>
        <source>This is a tooth with its root</source>
        <translation>Das ist ein Zahn mit Wurzel</translation>
    </message>
    <message>
        <source>This is a jaw, not a crown</source>
        <translation>Das ist ein Kiefer, keine Krone</translation>
    </message>
    <message>
        <source>These are several bodies</source>
        <translation>Das sind mehrere Körper</translation>
    </message>
    <message>
        <source>Where is mesial?</source>
        <translation>Wo ist mesial?</translation>
    </message>
    <message>
        <source>Click the side of the crown that faces the midline. The right button turns it.</source>
        <translation>Klicken Sie auf die Seite der Krone, die zur Mittellinie zeigt. Die rechte Taste dreht sie.</translation>
    </message>
    <message>
        <source>Where is its outer side?</source>
        <translation>Wo ist ihre Außenseite?</translation>
    </message>
    <message>
        <source>Click the side that faces cheek or lips. The right button turns the crown.</source>
        <translation>Klicken Sie auf die Seite, die zu Wange oder Lippe zeigt. Die rechte Taste dreht die Krone.</translation>
    </message>
    <message>
        <source>Where does the screw leave?</source>
        <translation>Wo tritt die Schraube aus?</translation>
    </message>
    <message>
        <source>Click the middle of the channel&apos;s mouth. It runs along the axis of the bite.</source>
        <translation>Klicken Sie auf die Mitte der Kanalmündung. Der Kanal verläuft entlang der Kauachse.</translation>
    </message>
    <message>
        <source>Which way does it bite?</source>
        <translation>Welche Seite kaut?</translation>
    </message>
    <message>
        <source>Turn the crown until you look straight onto its biting side.</source>
        <translation>Drehen Sie die Krone, bis Sie gerade auf ihre Kauseite blicken.</translation>
    </message>
</context>
<context>
    <name>order desk</name>
    <message>
        <source>Step {step}, {liquid}, is step {to} now</source>
        <translation>Schritt {step}, {liquid}, ist jetzt Schritt {to}</translation>
    </message>
    <message>
        <source>move a step</source>
        <translation>einen Schritt verschieben</translation>
    </message>
    <message>
        <source>Another order</source>
        <translation>Andere Reihenfolge</translation>
    </message>
    <message>
        <source>another order</source>
        <translation>andere Reihenfolge</translation>
    </message>
    <message>
        <source>{moved}: no colour changes (dE00 0.0).</source>
        <translation>{moved}: Keine Farbe ändert sich (dE00 0.0).</translation>
    </message>
    <message>
        <source>{moved}: {label} changes by dE00 {de00:.1f}, nothing else does.</source>
        <translation>{moved}: {label} ändert sich um dE00 {de00:.1f}, sonst nichts.</translation>
    </message>
    <message>
        <source>{moved}: {first} changes by dE00 {most:.1f}, {second} by {less:.1f}, others by no more.</source>
        <translation>{moved}: {first} ändert sich um dE00 {most:.1f}, {second} um {less:.1f}, andere um nicht mehr.</translation>
    </message>
</context>
<context>
    <name>order tag</name>
    <message>
        <source>step {step} as step {to}</source>
        <translation>Schritt {step} als Schritt {to}</translation>
    </message>
    <message>
        <source>step {step} stays</source>
        <translation>Schritt {step} bleibt</translation>
    </message>
</context>
<context>
    <name>out of reach</name>
    <message>
        <source>not reachable: stain only lowers value and adds chroma</source>
        <translation>nicht erreichbar: Färbung senkt nur die Helligkeit und erhöht die Sättigung</translation>
    </message>
</context>
<context>
    <name>outcome</name>
    <message>
        <source>{low:.1f} to {high:.1f}</source>
        <translation>{low:.1f} bis {high:.1f}</translation>
    </message>
</context>
<context>
    <name>outcome panel</name>
    <message>
        <source>not reachable: bare block {axis} {bare:.1f}</source>
        <translation>nicht erreichbar: ungefärbter Rohling {axis} {bare:.1f}</translation>
    </message>
    <message>
        <source>wanted and predicted; L*, C*, h, dE00</source>
        <translation>Ziel und Vorhersage; L*, C*, h, dE00</translation>
    </message>
    <message>
        <source>wanted | predicted</source>
        <translation>Ziel | Vorhersage</translation>
    </message>
    <message>
        <source>predicted</source>
        <translation>Vorhersage</translation>
    </message>
    <message>
        <source>Outcome</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>say what is wanted</source>
        <translation>Ziel angeben</translation>
    </message>
    <message>
        <source>Not reachable in {areas}: stain only lowers value and adds chroma.</source>
        <translation>Nicht erreichbar bei {areas}: Färbung senkt nur die Helligkeit und erhöht die Sättigung.</translation>
    </message>
    <message>
        <source>change what is wanted</source>
        <translation>Ziel ändern</translation>
    </message>
    <message>
        <source>fewest coats</source>
        <translation>wenigste Aufträge</translation>
    </message>
    <message>
        <source>from body</source>
        <translation>zum Körper</translation>
    </message>
    <message>
        <source>wanted</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <source>inside the uncertainty</source>
        <translation>innerhalb der Unsicherheit</translation>
    </message>
    <message>
        <source>{figures} (one standard deviation).</source>
        <translation>{figures} (eine Standardabweichung).</translation>
    </message>
    <message>
        <source>Wanted colour: {conversion}.</source>
        <translation>Gewünschte Farbe: {conversion}.</translation>
    </message>
    <message>
        <source>Click to turn the crown to this area.</source>
        <translation>Klick dreht die Krone zu dieser Fläche.</translation>
    </message>
</context>
<context>
    <name>packs</name>
    <message>
        <source>The {what} of an exercise needs 1 to {most_name_characters} characters on one line.</source>
        <translation>Eine Übung braucht hier 1 bis {most_name_characters} Zeichen in einer Zeile: {what}.</translation>
    </message>
    <message>
        <source>The seed {seed} is not between 0 and {most_seed}.</source>
        <translation>Der Startwert {seed} liegt nicht zwischen 0 und {most_seed}.</translation>
    </message>
    <message>
        <source>The variation {variation:g} is not between 0 and 1.</source>
        <translation>Die Abwandlung {variation:g} liegt nicht zwischen 0 und 1.</translation>
    </message>
    <message>
        <source>The exercise asks for a crown that cannot be made (tooth {given}).</source>
        <translation>Die Übung verlangt eine Krone, die nicht gemacht werden kann (Zahn {given}).</translation>
    </message>
    <message>
        <source>Teeth that can: {map}.</source>
        <translation>Zähne, bei denen es geht: {map}.</translation>
    </message>
    <message>
        <source>An exercise has at most {most_settings} settings.</source>
        <translation>Eine Übung hat höchstens {most_settings} Einstellungen.</translation>
    </message>
    <message>
        <source>A pack needs a title of 1 to {most_name_characters} characters.</source>
        <translation>Ein Paket braucht einen Titel von 1 bis {most_name_characters} Zeichen.</translation>
    </message>
    <message>
        <source>A pack holds 1 to {most_exercises} exercises, this one {count}.</source>
        <translation>Ein Paket fasst 1 bis {most_exercises} Übungen, dieses {count}.</translation>
    </message>
    <message>
        <source>The notes of a pack have at most {most_text} characters.</source>
        <translation>Die Notizen eines Pakets haben höchstens {most_text} Zeichen.</translation>
    </message>
    <message>
        <source>The file is larger than any pack ({most_bytes} kB).</source>
        <translation>Die Datei ist größer als jedes Paket ({most_bytes} kB).</translation>
    </message>
    <message>
        <source>Ask for it again from whoever made it.</source>
        <translation>Lassen Sie sie sich noch einmal geben.</translation>
    </message>
    <message>
        <source>The file cannot be read.</source>
        <translation>Die Datei kann nicht gelesen werden.</translation>
    </message>
    <message>
        <source>Look whether it is still there.</source>
        <translation>Sehen Sie nach, ob sie noch da ist.</translation>
    </message>
    <message>
        <source>{name}, exercise {number}</source>
        <translation>{name}, Übung {number}</translation>
    </message>
    <message>
        <source>The pack is not written the way packs are, so results could not be told to belong to it.</source>
        <translation>Das Paket ist nicht so geschrieben, wie Pakete es sind; Ergebnisse ließen sich ihm nicht zuordnen.</translation>
    </message>
    <message>
        <source>Let it be saved again by the program it was made with.</source>
        <translation>Lassen Sie es von dem Programm neu speichern, mit dem es gemacht wurde.</translation>
    </message>
    <message>
        <source>A newer version wrote this pack (version {version}; this one reads up to {version_2}).</source>
        <translation>Eine neuere Version hat dieses Paket geschrieben (Version {version}; diese liest bis {version_2}).</translation>
    </message>
    <message>
        <source>Open it with that version.</source>
        <translation>Öffnen Sie es mit jener Version.</translation>
    </message>
    <message>
        <source>There is no kind of exercise called {kind!r}.</source>
        <translation>Eine Übungsart namens {kind!r} gibt es nicht.</translation>
    </message>
    <message>
        <source>The pack may be made for another version of the program.</source>
        <translation>Das Paket ist vielleicht für eine andere Version des Programms gemacht.</translation>
    </message>
    <message>
        <source>The pack is damaged or was changed by hand.</source>
        <translation>Das Paket ist beschädigt oder wurde von Hand geändert.</translation>
    </message>
    <message>
        <source>This is no pack of exercises.</source>
        <translation>Das ist kein Übungspaket.</translation>
    </message>
    <message>
        <source>Packs end in {suffix}.</source>
        <translation>Pakete enden auf {suffix}.</translation>
    </message>
</context>
<context>
    <name>photograph</name>
    <message>
        <source>No grey patch was picked.</source>
        <translation>Kein Graufeld wurde gewählt.</translation>
    </message>
    <message>
        <source>Click the grey patch first; without one, light and exposure are not known.</source>
        <translation>Klicken Sie zuerst auf das Graufeld; ohne es sind Licht und Belichtung nicht bekannt.</translation>
    </message>
    <message>
        <source>A grey patch of {reflectance:.0f} % is out of range.</source>
        <translation>Ein Graufeld von {reflectance:.0f} % liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give its reflectance, 5 to 95 %; an ordinary grey card has 18 %.</source>
        <translation>Geben Sie seine Reflexion an, 5 bis 95 %; eine gewöhnliche Graukarte hat 18 %.</translation>
    </message>
    <message>
        <source>grey patch</source>
        <translation>Graufeld</translation>
    </message>
    <message>
        <source>The grey patch is too dark.</source>
        <translation>Das Graufeld ist zu dunkel.</translation>
    </message>
    <message>
        <source>Take the picture with more light.</source>
        <translation>Nehmen Sie das Bild mit mehr Licht auf.</translation>
    </message>
    <message>
        <source>spot on the tooth</source>
        <translation>Fleck auf dem Zahn</translation>
    </message>
    <message>
        <source>The spot on the tooth is too dark.</source>
        <translation>Der Fleck auf dem Zahn ist zu dunkel.</translation>
    </message>
    <message>
        <source>Choose a lighter spot.</source>
        <translation>Wählen Sie einen helleren Fleck.</translation>
    </message>
    <message>
        <source>The spot comes out brighter than a perfect white.</source>
        <translation>Der Fleck wird heller als ein vollkommenes Weiß.</translation>
    </message>
    <message>
        <source>The patch lies in shadow, the spot is glossy, or the patch&apos;s reflectance is not what was given.</source>
        <translation>Das Feld liegt im Schatten, der Fleck glänzt, oder die Reflexion des Felds ist nicht die angegebene.</translation>
    </message>
    <message>
        <source>{where}: grey patch of {reflectance:.0f} %, light of about {light_k:.0f} K balanced</source>
        <translation>{where}: Graufeld von {reflectance:.0f} %, Licht von etwa {light_k:.0f} K abgeglichen</translation>
    </message>
    <message>
        <source>The {what} has too few points, or lies outside the picture.</source>
        <translation>{what}: hat zu wenige Punkte oder liegt außerhalb des Bilds.</translation>
    </message>
    <message>
        <source>Make the spot larger, or take the picture from nearer.</source>
        <translation>Machen Sie den Fleck größer, oder nehmen Sie das Bild aus der Nähe auf.</translation>
    </message>
    <message>
        <source>The {what} is over-exposed or glossy.</source>
        <translation>{what}: überbelichtet oder glänzend.</translation>
    </message>
    <message>
        <source>Choose a spot without gloss, or take the picture with less light.</source>
        <translation>Wählen Sie einen Fleck ohne Glanz, oder nehmen Sie das Bild mit weniger Licht auf.</translation>
    </message>
    <message>
        <source>The patch is not a neutral grey.</source>
        <translation>Das Feld ist kein neutrales Grau.</translation>
    </message>
    <message>
        <source>Click a patch that has no colour of its own; a white balance that was set in the camera helps.</source>
        <translation>Klicken Sie auf ein Feld ohne eigene Farbe; ein in der Kamera eingestellter Weißabgleich hilft.</translation>
    </message>
    <message>
        <source>The spot covers more than the grey patch, or a shadow falls on it.</source>
        <translation>Der Fleck bedeckt mehr als das Graufeld, oder ein Schatten fällt darauf.</translation>
    </message>
    <message>
        <source>Click the middle of the patch, or make the spot smaller.</source>
        <translation>Klicken Sie auf die Mitte des Felds, oder machen Sie den Fleck kleiner.</translation>
    </message>
</context>
<context>
    <name>photograph dialog</name>
    <message>
        <source>grey patch</source>
        <translation>Graufeld</translation>
    </message>
    <message>
        <source>Open a picture that shows the tooth beside a neutral grey patch, in the same light.</source>
        <translation>Öffnen Sie ein Bild, das den Zahn neben einem neutralen Graufeld zeigt, im selben Licht.</translation>
    </message>
    <message>
        <source>Arrow keys move the chosen spot, plus and minus or the wheel change its size. Keep off gloss, edges and shadows.</source>
        <translation>Pfeiltasten bewegen den gewählten Fleck, Plus und Minus oder das Rad ändern seine Größe. Meiden Sie Glanz, Kanten und Schatten.</translation>
    </message>
    <message>
        <source>Shade from a photograph</source>
        <translation>Farbe aus einem Foto</translation>
    </message>
    <message>
        <source>Open a &amp;picture...</source>
        <translation>&amp;Bild öffnen...</translation>
    </message>
    <message>
        <source>Reflectance of the grey patch in percent</source>
        <translation>Reflexion des Graufelds in Prozent</translation>
    </message>
    <message>
        <source>The patch reflects</source>
        <translation>Das Feld reflektiert</translation>
    </message>
    <message>
        <source>The next click in the picture places the {name}</source>
        <translation>Der nächste Klick ins Bild setzt: {name}</translation>
    </message>
    <message>
        <source>Open a picture</source>
        <translation>Bild öffnen</translation>
    </message>
    <message>
        <source>Pictures ({wanted})</source>
        <translation>Bilder ({wanted})</translation>
    </message>
    <message>
        <source>light of {light_k:.0f} K</source>
        <translation>Licht von {light_k:.0f} K</translation>
    </message>
    <message>
        <source>not usable</source>
        <translation>nicht brauchbar</translation>
    </message>
    <message>
        <source>Now click the tooth, away from gloss and edges.</source>
        <translation>Klicken Sie jetzt auf den Zahn, abseits von Glanz und Kanten.</translation>
    </message>
    <message>
        <source>L* a* b* after balancing, with one standard deviation. A photograph is the least certain of the three ways.</source>
        <translation>L* a* b* nach dem Abgleich, mit einer Standardabweichung. Ein Foto ist der unsicherste der drei Wege.</translation>
    </message>
</context>
<context>
    <name>photograph file</name>
    <message>
        <source>The photograph cannot be read: it is not an ordinary file.</source>
        <translation>Das Foto kann nicht gelesen werden: Es ist keine gewöhnliche Datei.</translation>
    </message>
    <message>
        <source>The photograph cannot be read ({value}).</source>
        <translation>Das Foto kann nicht gelesen werden ({value}).</translation>
    </message>
    <message>
        <source>It is not a picture that can be read here.</source>
        <translation>Das ist kein Bild, das hier gelesen werden kann.</translation>
    </message>
    <message>
        <source>Give a JPEG, PNG, TIFF, WebP or BMP file.</source>
        <translation>Geben Sie eine JPEG-, PNG-, TIFF-, WebP- oder BMP-Datei an.</translation>
    </message>
    <message>
        <source>The picture is damaged or cut short ({error}).</source>
        <translation>Das Bild ist beschädigt oder abgeschnitten ({error}).</translation>
    </message>
    <message>
        <source>Copy it from the camera again.</source>
        <translation>Kopieren Sie es noch einmal von der Kamera.</translation>
    </message>
    <message>
        <source>The picture has only {width} by {height} points.</source>
        <translation>Das Bild hat nur {width} mal {height} Punkte.</translation>
    </message>
    <message>
        <source>Take one with at least {least_side_px} points on its shorter side.</source>
        <translation>Nehmen Sie eines mit mindestens {least_side_px} Punkten an der kürzeren Seite auf.</translation>
    </message>
    <message>
        <source>The picture is larger than {most_pixels} million points or {most_bytes} megabytes.</source>
        <translation>Das Bild ist größer als {most_pixels} Millionen Punkte oder {most_bytes} Megabyte.</translation>
    </message>
    <message>
        <source>Save it smaller, or cut out the teeth and the grey patch.</source>
        <translation>Speichern Sie es kleiner, oder schneiden Sie Zähne und Graufeld aus.</translation>
    </message>
    <message>
        <source>The picture has no colours.</source>
        <translation>Das Bild hat keine Farben.</translation>
    </message>
    <message>
        <source>Take one in colour.</source>
        <translation>Nehmen Sie eines in Farbe auf.</translation>
    </message>
    <message>
        <source>The picture was made for printing inks.</source>
        <translation>Das Bild wurde für Druckfarben gemacht.</translation>
    </message>
    <message>
        <source>Give it as the camera wrote it.</source>
        <translation>Geben Sie es, wie die Kamera es geschrieben hat.</translation>
    </message>
</context>
<context>
    <name>picture canvas</name>
    <message>
        <source>Crown picture</source>
        <translation>Bild der Krone</translation>
    </message>
</context>
<context>
    <name>picture spots</name>
    <message>
        <source>Photograph</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>Click to place the chosen spot. Arrow keys move it, plus and minus change its size.</source>
        <translation>Klick setzt den gewählten Fleck. Pfeiltasten bewegen ihn, Plus und Minus ändern seine Größe.</translation>
    </message>
</context>
<context>
    <name>plan</name>
    <message>
        <source>{low}-{high} is not a number of coats.</source>
        <translation>{low}-{high} ist keine Zahl von Aufträgen.</translation>
    </message>
    <message>
        <source>Give 0 to {max_coats}, or a span with the smaller number first.</source>
        <translation>Geben Sie 0 bis {max_coats} an, oder eine Spanne mit der kleineren Zahl zuerst.</translation>
    </message>
    <message>
        <source>&apos;{text}&apos; is not a number of coats.</source>
        <translation>„{text}“ ist keine Zahl von Aufträgen.</translation>
    </message>
    <message>
        <source>Type 3, or a span such as 2-3.</source>
        <translation>Tippen Sie 3, oder eine Spanne wie 2-3.</translation>
    </message>
    <message>
        <source>A fade from {full_down_to_mm} to {zero_at_mm} mm has no length.</source>
        <translation>Ein Auslauf von {full_down_to_mm} bis {zero_at_mm} mm hat keine Länge.</translation>
    </message>
    <message>
        <source>The second length must be the larger one.</source>
        <translation>Die zweite Länge muss die größere sein.</translation>
    </message>
    <message>
        <source>{count} streaks of {length_mm} mm are not streaks.</source>
        <translation>{count} Streifen von {length_mm} mm sind keine Streifen.</translation>
    </message>
    <message>
        <source>Give 3 to 7 strokes of 2 to 4 mm.</source>
        <translation>Geben Sie 3 bis 7 Striche von 2 bis 4 mm an.</translation>
    </message>
    <message>
        <source>A streak runs towards the margin or away from it, with at least one coat.</source>
        <translation>Ein Streifen läuft zum Kronenrand hin oder von ihm weg, mit mindestens einem Auftrag.</translation>
    </message>
    <message>
        <source>Brushed coats need one number per vertex.</source>
        <translation>Gepinselte Aufträge brauchen eine Zahl je Punkt.</translation>
    </message>
    <message>
        <source>Brushed coats must name their vertices in rising order.</source>
        <translation>Gepinselte Aufträge müssen ihre Punkte in steigender Ordnung nennen.</translation>
    </message>
    <message>
        <source>An area appears twice in one step.</source>
        <translation>Eine Fläche kommt in einem Schritt zweimal vor.</translation>
    </message>
    <message>
        <source>An edge softness of {edge_softness_mm} mm is out of range (0 to 3).</source>
        <translation>Eine Randweichheit von {edge_softness_mm} mm liegt außerhalb des Bereichs (0 bis 3).</translation>
    </message>
    <message>
        <source>Jar {number} has no liquid or a negative number of drops.</source>
        <translation>Napf {number} hat keine Flüssigkeit oder eine negative Tropfenzahl.</translation>
    </message>
    <message>
        <source>Two jars have the same number.</source>
        <translation>Zwei Näpfe haben dieselbe Nummer.</translation>
    </message>
    <message>
        <source>A step uses jar {missing}, which is not on the tray.</source>
        <translation>Ein Schritt nimmt Napf {missing}, der nicht auf dem Tablett steht.</translation>
    </message>
    <message>
        <source>A plan has at most {max_steps} steps.</source>
        <translation>Ein Plan hat höchstens {max_steps} Schritte.</translation>
    </message>
    <message>
        <source>There is no jar {number} on the tray.</source>
        <translation>Auf dem Tablett steht kein Napf {number}.</translation>
    </message>
</context>
<context>
    <name>plan desk</name>
    <message>
        <source>No coats in this plan yet: how long the day takes is told once there are.</source>
        <translation>Noch keine Aufträge in diesem Plan: Wie lange der Tag dauert, steht hier, sobald es welche gibt.</translation>
    </message>
    <message>
        <source>remove a step</source>
        <translation>einen Schritt entfernen</translation>
    </message>
    <message>
        <source>take a step from another jar</source>
        <translation>einen Schritt aus einem anderen Napf nehmen</translation>
    </message>
    <message>
        <source>choose the block</source>
        <translation>den Rohling wählen</translation>
    </message>
    <message>
        <source>choose the programme</source>
        <translation>das Programm wählen</translation>
    </message>
    <message>
        <source>set the size of the mesh</source>
        <translation>die Größe des Netzes setzen</translation>
    </message>
    <message>
        <source>Jar {number}: {warning}</source>
        <translation>Napf {number}: {warning}</translation>
    </message>
    <message>
        <source>light figures are inherited from the zone below</source>
        <translation>blasse Zahlen gelten von der Zone darunter</translation>
    </message>
    <message>
        <source>being predicted</source>
        <translation>wird vorhergesagt</translation>
    </message>
    <message>
        <source>Not calibrated: direction, not a match.</source>
        <translation>Nicht kalibriert: nur eine Richtung.</translation>
    </message>
    <message>
        <source>clear {area}, step {step}</source>
        <translation>{area} leeren, Schritt {step}</translation>
    </message>
    <message>
        <source>{span} on {area}, step {step}</source>
        <translation>{span} auf {area}, Schritt {step}</translation>
    </message>
    <message>
        <source>lock the coats of step {step}</source>
        <translation>die Aufträge von Schritt {step} sperren</translation>
    </message>
    <message>
        <source>set free the coats of step {step}</source>
        <translation>die Aufträge von Schritt {step} freigeben</translation>
    </message>
    <message>
        <source>lock the coats of {count} cells</source>
        <translation>die Aufträge von {count} Zellen sperren</translation>
    </message>
    <message>
        <source>set free the coats of {count} cells</source>
        <translation>die Aufträge von {count} Zellen freigeben</translation>
    </message>
    <message>
        <source>add a step</source>
        <translation>einen Schritt hinzufügen</translation>
    </message>
    <message>
        <source>add a step of {liquid}</source>
        <translation>einen Schritt mit {liquid} hinzufügen</translation>
    </message>
    <message>
        <source>jar {number}</source>
        <translation>Napf {number}</translation>
    </message>
    <message>
        <source>new jar</source>
        <translation>neuer Napf</translation>
    </message>
    <message>
        <source>choose what lies behind</source>
        <translation>wählen, was dahinter liegt</translation>
    </message>
</context>
<context>
    <name>plan dialogs</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>change what is done after sintering</source>
        <translation>ändern, was nach dem Sintern geschieht</translation>
    </message>
    <message>
        <source>change hand and uptake</source>
        <translation>Hand und Flüssigkeitsaufnahme ändern</translation>
    </message>
    <message>
        <source>change what lies behind</source>
        <translation>ändern, was dahinter liegt</translation>
    </message>
    <message>
        <source>{kind} from {bottom:g} mm</source>
        <translation>{kind} ab {bottom:g} mm</translation>
    </message>
    <message>
        <source>Height in the block</source>
        <translation>Höhe im Rohling</translation>
    </message>
    <message>
        <source>Layers of {name}: {layers}.
Lowest point of the crown above the bottom of the blank, mm milled:</source>
        <translation>Schichten von {name}: {layers}.
Tiefster Punkt der Krone über dem Boden des Rohlings, mm gefräst:</translation>
    </message>
    <message>
        <source>{height:g} mm above the bottom of the blank</source>
        <translation>{height:g} mm über dem Boden des Rohlings</translation>
    </message>
    <message>
        <source>coupon of {programme}</source>
        <translation>Plättchen zu {programme}</translation>
    </message>
    <message>
        <source>take the screw channel away</source>
        <translation>den Schraubenkanal wegnehmen</translation>
    </message>
    <message>
        <source>Comparing furnaces</source>
        <translation>Öfen werden verglichen</translation>
    </message>
    <message>
        <source>Point at a place of the crown first.</source>
        <translation>Zeigen Sie zuerst auf eine Stelle der Krone.</translation>
    </message>
    <message>
        <source>Checked: {place}</source>
        <translation>Geprüft: {place}</translation>
    </message>
</context>
<context>
    <name>plate</name>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>cancel</source>
        <translation>abbrechen</translation>
    </message>
    <message>
        <source>Share done</source>
        <translation>Erledigter Anteil</translation>
    </message>
    <message>
        <source>{title}: {phrase}, {share:.0f} percent</source>
        <translation>{title}: {phrase}, {share:.0f} Prozent</translation>
    </message>
    <message>
        <source>{phrase}, about {count:.0f} s left</source>
        <translation>{phrase}, noch etwa {count:.0f} s</translation>
    </message>
    <message>
        <source>{phrase}, about {count:.0f} min left</source>
        <translation>{phrase}, noch etwa {count:.0f} min</translation>
    </message>
</context>
<context>
    <name>point check</name>
    <message>
        <source>There is no vertex {vertex}.</source>
        <translation>Einen Punkt {vertex} gibt es nicht.</translation>
    </message>
    <message>
        <source>They run from 0 to {count}.</source>
        <translation>Es gibt die Punkte 0 bis {count}.</translation>
    </message>
    <message>
        <source>Coats of shape {shape} do not fit {count} steps on {count_2} vertices.</source>
        <translation>Aufträge der Form {shape} passen nicht zu {count} Schritten auf {count_2} Punkten.</translation>
    </message>
    <message>
        <source>The fast answer is good here: {off:.1f} dE00 from the exact calculation, hardly visible.</source>
        <translation>Die schnelle Antwort ist hier gut: {off:.1f} dE00 neben der genauen Rechnung, kaum sichtbar.</translation>
    </message>
    <message>
        <source>The fast answer is fair here: {off:.1f} dE00 from the exact calculation, few would see it.</source>
        <translation>Die schnelle Antwort ist hier brauchbar: {off:.1f} dE00 neben der genauen Rechnung, wenige sähen es.</translation>
    </message>
    <message>
        <source>Take care here: the fast answer is {off:.1f} dE00 from the exact calculation, which can be seen; the wall is too thin or too clear for it.</source>
        <translation>Vorsicht hier: Die schnelle Antwort liegt {off:.1f} dE00 neben der genauen Rechnung, das ist zu sehen; die Wand ist zu dünn oder zu klar dafür.</translation>
    </message>
</context>
<context>
    <name>practice</name>
    <message>
        <source>Find zones and accents</source>
        <translation>Zonen und Akzente finden</translation>
    </message>
    <message>
        <source>Reach a shade on a given block</source>
        <translation>Eine Farbe auf gegebenem Rohling erreichen</translation>
    </message>
    <message>
        <source>Choose the block</source>
        <translation>Den Rohling wählen</translation>
    </message>
    <message>
        <source>Lower the value of the cusps, not their hue</source>
        <translation>Helligkeit der Höcker senken, nicht den Farbton</translation>
    </message>
    <message>
        <source>As few coats and jars as do it</source>
        <translation>So wenige Aufträge und Näpfe wie möglich</translation>
    </message>
    <message>
        <source>A bridge whose units look apart</source>
        <translation>Eine Brücke, deren Einheiten getrennt wirken</translation>
    </message>
    <message>
        <source>A crown over a dark stump</source>
        <translation>Eine Krone über einem dunklen Stumpf</translation>
    </message>
    <message>
        <source>Read a coat map and paint it in order</source>
        <translation>Einen Auftragsplan lesen und der Reihe nach auftragen</translation>
    </message>
    <message>
        <source>Judge differences of value by eye</source>
        <translation>Helligkeitsunterschiede mit dem Auge beurteilen</translation>
    </message>
    <message>
        <source>What went wrong?</source>
        <translation>Was ging schief?</translation>
    </message>
    <message>
        <source>There is no kind of exercise called {kind!r}.</source>
        <translation>Eine Übungsart namens {kind!r} gibt es nicht.</translation>
    </message>
    <message>
        <source>The pack may be made for another version of the program.</source>
        <translation>Das Paket ist vielleicht für eine andere Version des Programms gemacht.</translation>
    </message>
    <message>
        <source>The level {level!r} of the exercise &apos;{name}&apos; is none.</source>
        <translation>Die Stufe {level!r} der Übung „{name}“ gibt es nicht.</translation>
    </message>
    <message>
        <source>Levels are 1, 2 and 3.</source>
        <translation>Stufen sind 1, 2 und 3.</translation>
    </message>
    <message>
        <source>The exercise &apos;{name}&apos; has a setting &apos;{unknown}&apos; that is not known here.</source>
        <translation>Die Übung „{name}“ hat eine hier unbekannte Einstellung „{unknown}“.</translation>
    </message>
    <message>
        <source>&apos;{title}&apos; cannot be asked of tooth {given}.</source>
        <translation>„{title}“ kann für Zahn {given} nicht gefragt werden.</translation>
    </message>
    <message>
        <source>Choose one of {able}.</source>
        <translation>Wählen Sie einen von {able}.</translation>
    </message>
    <message>
        <source>Another block was milled than the one that was planned</source>
        <translation>Ein anderer Rohling wurde gefräst als der geplante</translation>
    </message>
    <message>
        <source>All areas are darker or deeper by about the same step, thick walls as much as thin ones</source>
        <translation>Alle Flächen sind um etwa denselben Betrag dunkler oder satter, dicke Wände so sehr wie dünne</translation>
    </message>
    <message>
        <source>The block is the larger part of the colour: coats sit on top of it. A whole crown that is off alike, whatever was painted where, was milled from another block. Compare the lot on the sheet with the blank before the furnace is loaded.</source>
        <translation>Der Rohling ist der größere Teil der Farbe: Aufträge liegen obenauf. Eine ganze Krone, die gleichmäßig abweicht, was auch immer wo aufgetragen wurde, wurde aus einem anderen Rohling gefräst. Vergleichen Sie die Charge auf dem Blatt mit dem Rohling, bevor der Ofen beschickt wird.</translation>
    </message>
    <message>
        <source>The fissures got more coats than planned</source>
        <translation>Die Fissuren bekamen mehr Aufträge als geplant</translation>
    </message>
    <message>
        <source>Only the grooves are too dark; everything beside them is as planned</source>
        <translation>Nur die Furchen sind zu dunkel; alles daneben ist wie geplant</translation>
    </message>
    <message>
        <source>A fissure holds the liquid, and a wet brush fills it again and again. Count the coats aloud, and take up what stands in the groove with a dry brush.</source>
        <translation>Eine Fissur hält die Flüssigkeit, und ein nasser Pinsel füllt sie immer wieder. Zählen Sie die Aufträge laut, und nehmen Sie mit trockenem Pinsel auf, was in der Furche steht.</translation>
    </message>
    <message>
        <source>A strip between two areas was never painted</source>
        <translation>Ein Streifen zwischen zwei Flächen wurde nie gefärbt</translation>
    </message>
    <message>
        <source>A narrow light line runs along the border of neck and body</source>
        <translation>Eine schmale helle Linie läuft entlang der Grenze von Zahnhals und Körper</translation>
    </message>
    <message>
        <source>Each area was painted up to its border, none over it. Let neighbouring areas meet: a border is feathered, not left free.</source>
        <translation>Jede Fläche wurde bis an ihre Grenze gefärbt, keine darüber. Lassen Sie benachbarte Flächen zusammenstoßen: Eine Grenze wird ausgestrichen, nicht frei gelassen.</translation>
    </message>
    <message>
        <source>The cusps were lowered with a cool liquid instead of the planned one</source>
        <translation>Die Höcker wurden mit einer kühlen statt der geplanten Flüssigkeit gesenkt</translation>
    </message>
    <message>
        <source>The cusps are greenish: their a* is below that of the plan, the rest is as planned</source>
        <translation>Die Höcker sind grünlich: Ihr a* liegt unter dem des Plans, der Rest ist wie geplant</translation>
    </message>
    <message>
        <source>What lowers value also has a hue. On a yellowish block a cool liquid turns green. Take a neutral or a rosier one, or mix the two kinds of coats.</source>
        <translation>Was die Helligkeit senkt, hat auch einen Farbton. Auf einem gelblichen Rohling wird eine kühle Flüssigkeit grün. Nehmen Sie eine neutrale oder rötlichere, oder mischen Sie beide Arten von Aufträgen.</translation>
    </message>
    <message>
        <source>It was sintered in a faster programme than planned</source>
        <translation>Es wurde in einem schnelleren Programm gesintert als geplant</translation>
    </message>
    <message>
        <source>The whole crown is lighter and paler, as if more opaque; nothing is bare</source>
        <translation>Die ganze Krone ist heller und blasser, als wäre sie opaker; nichts ist ungefärbt</translation>
    </message>
    <message>
        <source>In a fast cycle grains stay small and pores stay open: light is scattered back before it has passed the stain. Fire in the programme the plan was made for, or plan for the one you have.</source>
        <translation>In einem schnellen Zyklus bleiben Körner klein und Poren offen: Licht wird zurückgestreut, bevor es die Färbung durchquert hat. Sintern Sie in dem Programm, für das der Plan gemacht wurde, oder planen Sie für Ihres.</translation>
    </message>
    <message>
        <source>The stump is darker than it was said to be</source>
        <translation>Der Stumpf ist dunkler, als er angegeben war</translation>
    </message>
    <message>
        <source>The whole crown is darker and greyer, thin walls far more than thick ones</source>
        <translation>Die ganze Krone ist dunkler und grauer, dünne Wände weit mehr als dicke</translation>
    </message>
    <message>
        <source>Zirconia is translucent: what lies behind shows, and most where the wall is thin. Ask for the shade of the stump, and cover it with an opaque cement or a lighter block.</source>
        <translation>Zirkonoxid ist transluzent: Was dahinter liegt, zeigt sich, und am meisten, wo die Wand dünn ist. Fragen Sie nach der Farbe des Stumpfs, und decken Sie ihn mit einem opaken Zement oder einem helleren Rohling ab.</translation>
    </message>
    <message>
        <source>In Plan press &quot;+ step&quot; and choose a liquid. Bases go nearly everywhere; what lowers value goes on the cusps; a dark accent into the fissures.</source>
        <translation>Drücken Sie in Plan „+ Schritt“ und wählen Sie eine Flüssigkeit. Grundtöne kommen fast überall hin; was die Helligkeit senkt, auf die Höcker; ein dunkler Akzent in die Fissuren.</translation>
    </message>
    <message>
        <source>In Plan press &quot;+ step&quot; and choose a liquid. Bases go nearly everywhere; what lowers value goes on the incisal edge. A front tooth has no fissures.</source>
        <translation>Drücken Sie in Plan „+ Schritt“ und wählen Sie eine Flüssigkeit. Grundtöne kommen fast überall hin; was die Helligkeit senkt, auf die Schneidekante. Ein Frontzahn hat keine Fissuren.</translation>
    </message>
    <message>
        <source>Outcome shows every area&apos;s predicted colour beside the wanted one. They are to become alike.</source>
        <translation>Das Ergebnis zeigt die vorhergesagte Farbe jeder Fläche neben dem Ziel. Sie sollen gleich werden.</translation>
    </message>
    <message>
        <source>Click a cell of the table (a row is an area, a column a step) and type how many coats: 1, 2, 3. Delete empties it. The prediction follows at once.</source>
        <translation>Klicken Sie auf eine Zelle der Tabelle (eine Zeile ist eine Fläche, eine Spalte ein Schritt) und tippen Sie die Zahl der Aufträge: 1, 2, 3. Entf leert sie. Die Vorhersage folgt sofort.</translation>
    </message>
    <message>
        <source>Near enough is 1.0 dE00 and, from the body, 1.0 L* and 1.5 C*. Undo (Ctrl+Z) takes anything back. Then hand in.</source>
        <translation>Nah genug sind 1.0 dE00 und, zum Körper, 1.0 L* und 1.5 C*. Rückgängig (Strg+Z) nimmt alles zurück. Dann geben Sie ab.</translation>
    </message>
    <message>
        <source>The crown is shown as it came out of the furnace. Hold it against the plan: the button below (or the key V) changes between the two.</source>
        <translation>Die Krone ist gezeigt, wie sie aus dem Ofen kam. Vergleichen Sie sie mit dem Plan: Der Knopf unten (oder die Taste V) wechselt zwischen beiden.</translation>
    </message>
    <message>
        <source>Point at the crown: both colours of the place are read out. Turn it with the right button; look at thin and thick walls, grooves, borders.</source>
        <translation>Zeigen Sie auf die Krone: Beide Farben der Stelle werden abgelesen. Drehen Sie sie mit der rechten Taste; betrachten Sie dünne und dicke Wände, Furchen, Grenzen.</translation>
    </message>
    <message>
        <source>Say what you see, then say what was done wrong, then hand in.</source>
        <translation>Sagen Sie, was Sie sehen, dann, was falsch gemacht wurde, dann geben Sie ab.</translation>
    </message>
    <message>
        <source>So far the whole outside counts as body. Paint the zones of this crown where they belong: neck (cervical), sides to the neighbours (interproximal), cusps, fissures.</source>
        <translation>Bisher zählt das ganze Äußere als Körper. Malen Sie die Zonen dieser Krone, wohin sie gehören: Zahnhals, Seiten zu den Nachbarn (Approximal), Höcker, Fissuren.</translation>
    </message>
    <message>
        <source>Click the name of a zone in the table of Plan, then paint it on the crown with the left button. The right button turns, the wheel zooms.</source>
        <translation>Klicken Sie in der Tabelle von Plan auf den Namen einer Zone, dann malen Sie sie mit der linken Taste auf die Krone. Die rechte Taste dreht, das Rad vergrößert.</translation>
    </message>
    <message>
        <source>Cervical: a band along the margin, about the lower third of the wall. Cusp: the upper third of the wall, and the biting surface inside the ridges.</source>
        <translation>Zahnhals: ein Band entlang des Kronenrands, etwa das untere Drittel der Wand. Höcker: das obere Drittel der Wand und die Kaufläche innerhalb der Leisten.</translation>
    </message>
    <message>
        <source>Interproximal: the middle of the two sides that face the neighbours. Fissure: the main grooves and pits, half a millimetre wide; set the size of the brush small.</source>
        <translation>Approximal: die Mitte der beiden Seiten, die zu den Nachbarn zeigen. Fissur: die Hauptfurchen und Gruben, einen halben Millimeter breit; stellen Sie den Pinsel klein.</translation>
    </message>
    <message>
        <source>Body is what remains. The eraser (E) makes body of what was painted. Half a millimetre at a border costs nothing.</source>
        <translation>Körper ist, was bleibt. Der Radierer (E) macht aus Gemaltem Körper. Ein halber Millimeter an einer Grenze kostet nichts.</translation>
    </message>
    <message>
        <source>The block is milled, the shade is given. Plan the coats that bring every area of the crown to what is wanted of it.</source>
        <translation>Der Rohling ist gefräst, die Farbe ist gegeben. Planen Sie die Aufträge, die jede Fläche der Krone zum Ziel bringen.</translation>
    </message>
    <message>
        <source>A shade is wanted, nothing is milled yet. Choose the block on which few coats bring the body to it. Stain only lowers value and adds chroma: it makes nothing lighter.</source>
        <translation>Eine Farbe ist gewünscht, noch ist nichts gefräst. Wählen Sie den Rohling, auf dem wenige Aufträge den Körper dahin bringen. Färbung senkt nur die Helligkeit und erhöht die Sättigung: Sie macht nichts heller.</translation>
    </message>
    <message>
        <source>Outcome shows the body of the bare block beside what is wanted: L* is value, C* is chroma, h is hue.</source>
        <translation>Das Ergebnis zeigt den Körper des ungefärbten Rohlings neben dem Ziel: L* ist Helligkeit, C* ist Sättigung, h ist Farbton.</translation>
    </message>
    <message>
        <source>At the top of Plan choose another block behind the word Block. All of strength class 3Y are asked about; the bare crown is shown at once.</source>
        <translation>Wählen Sie oben in Plan hinter dem Wort Rohling einen anderen. Gefragt sind alle der Festigkeitsklasse 3Y; die ungefärbte Krone wird sofort gezeigt.</translation>
    </message>
    <message>
        <source>Look for one that is a little lighter and a little paler than what is wanted. No coats need be planned.</source>
        <translation>Suchen Sie einen, der etwas heller und etwas blasser ist als das Ziel. Aufträge müssen nicht geplant werden.</translation>
    </message>
    <message>
        <source>Hand in when the block is chosen.</source>
        <translation>Geben Sie ab, wenn der Rohling gewählt ist.</translation>
    </message>
    <message>
        <source>Everything is planned but the cusps. Make them darker, as Outcome wants them, and keep them from turning green: a* must not fall below what is wanted of it.</source>
        <translation>Alles ist geplant außer den Höckern. Machen Sie sie dunkler, wie das Ergebnis es verlangt, und lassen Sie sie nicht grün werden: a* darf nicht unter das Ziel fallen.</translation>
    </message>
    <message>
        <source>The row &apos;cusp&apos; of Outcome shows what is predicted there; L* {value} and h {hue} are wanted. A larger h is greener (a* {a} is wanted; below zero is green).</source>
        <translation>Die Zeile „Höcker“ des Ergebnisses zeigt die Vorhersage dort; Ziel sind L* {value} und h {hue}. Ein größeres h ist grüner (a* {a} ist das Ziel; unter null ist grün).</translation>
    </message>
    <message>
        <source>Three liquids that lower value stand on the tray, none of them used yet: slate is cooler, ash neutral, heather rosier.</source>
        <translation>Drei Flüssigkeiten, die die Helligkeit senken, stehen auf dem Tablett, noch keine verwendet: slate ist kühler, ash neutral, heather rötlicher.</translation>
    </message>
    <message>
        <source>Press &quot;+ step&quot; in Plan, choose one of them, click its cell in the row &apos;cusp&apos; and type the coats. Two liquids may share the work.</source>
        <translation>Drücken Sie in Plan „+ Schritt“, wählen Sie eine davon, klicken Sie auf ihre Zelle in der Zeile „Höcker“ und tippen Sie die Aufträge. Zwei Flüssigkeiten können sich die Arbeit teilen.</translation>
    </message>
    <message>
        <source>Leave the other areas alone; the fissures follow by themselves, as light spreads. Hand in when L* and h of the cusps are near enough.</source>
        <translation>Lassen Sie die anderen Flächen in Ruhe; die Fissuren folgen von selbst, weil Licht sich ausbreitet. Geben Sie ab, wenn L* und h der Höcker nah genug sind.</translation>
    </message>
    <message>
        <source>Reach the wanted colours with as few jars and as few coats as you can. A jar more must be worth mixing it.</source>
        <translation>Erreichen Sie die gewünschten Farben mit so wenigen Näpfen und so wenigen Aufträgen wie möglich. Ein Napf mehr muss das Anmischen wert sein.</translation>
    </message>
    <message>
        <source>Coats are counted area by area. The same jar may serve neck, body and fissure with different numbers of coats. Hand in when nothing can be left out.</source>
        <translation>Aufträge werden Fläche für Fläche gezählt. Derselbe Napf darf Zahnhals, Körper und Fissur mit verschieden vielen Aufträgen dienen. Geben Sie ab, wenn sich nichts mehr weglassen lässt.</translation>
    </message>
    <message>
        <source>Three units in one piece look like one long tooth. Set them apart: darken connectors and embrasures as Outcome wants them, and leave the units as they are.</source>
        <translation>Drei Einheiten in einem Stück sehen aus wie ein langer Zahn. Heben Sie sie voneinander ab: Dunkeln Sie Verbinder und Interdentalräume ab, wie das Ergebnis es verlangt, und lassen Sie die Einheiten, wie sie sind.</translation>
    </message>
    <message>
        <source>The bridge is planned; only the row &apos;connector and embrasure&apos; has nothing of its own.</source>
        <translation>Die Brücke ist geplant; nur die Zeile „Verbinder, Interdentalraum“ hat nichts Eigenes.</translation>
    </message>
    <message>
        <source>A warm dark liquid does it best: take the step of umber, or add one with &quot;+ step&quot;. Click its cell in that row and type the coats.</source>
        <translation>Am besten geht es mit einer warmen dunklen Flüssigkeit: Nehmen Sie den Schritt mit umber, oder fügen Sie mit „+ Schritt“ einen hinzu. Klicken Sie auf seine Zelle in jener Zeile und tippen Sie die Aufträge.</translation>
    </message>
    <message>
        <source>Outcome shows the row&apos;s colour beside the wanted one. Too little joins the units, too much looks like a stain.</source>
        <translation>Das Ergebnis zeigt die Farbe der Zeile neben dem Ziel. Zu wenig verbindet die Einheiten, zu viel sieht wie ein Fleck aus.</translation>
    </message>
    <message>
        <source>Look at the bridge from buccal (B on the crown), then hand in.</source>
        <translation>Betrachten Sie die Brücke von bukkal (B auf der Krone), dann geben Sie ab.</translation>
    </message>
    <message>
        <source>The plan was made for a natural stump, but the one below is dark and shows through. Bring the crown back to what is wanted. The stump cannot be changed.</source>
        <translation>Der Plan wurde für einen natürlichen Stumpf gemacht, aber der darunter ist dunkel und scheint durch. Bringen Sie die Krone zum Ziel zurück. Der Stumpf kann nicht geändert werden.</translation>
    </message>
    <message>
        <source>Outcome shows how far the areas are too dark. Coats can only darken: taking some away helps, but not enough.</source>
        <translation>Das Ergebnis zeigt, um wie viel die Flächen zu dunkel sind. Aufträge können nur abdunkeln: Einige wegzunehmen hilft, aber nicht genug.</translation>
    </message>
    <message>
        <source>At the top of Plan choose another cement: an opaque one covers the stump.</source>
        <translation>Wählen Sie oben in Plan einen anderen Zement: Ein opaker verdeckt den Stumpf.</translation>
    </message>
    <message>
        <source>Choose a lighter block there, too, if the crown is still too dark, and give back coats where it becomes too pale.</source>
        <translation>Wählen Sie dort auch einen helleren Rohling, wenn die Krone noch zu dunkel ist, und geben Sie Aufträge zurück, wo sie zu blass wird.</translation>
    </message>
    <message>
        <source>Hand in when body and areas are near what is wanted: 1.0 dE00 is near enough.</source>
        <translation>Geben Sie ab, wenn Körper und Flächen dem Ziel nahe sind: 1.0 dE00 ist nah genug.</translation>
    </message>
    <message>
        <source>A coat map lies at the bench. Enter it as it is to be painted: the same liquids, on the same areas, as many coats, in the order of the sheet.</source>
        <translation>Ein Auftragsplan liegt am Platz. Geben Sie ihn ein, wie er aufzutragen ist: dieselben Flüssigkeiten, auf denselben Flächen, ebenso viele Aufträge, in der Reihenfolge des Blatts.</translation>
    </message>
    <message>
        <source>Press Show the coat map. Areas have numbers and hatches; the order of the steps stands on the sheet, with a stroke for every coat.</source>
        <translation>Drücken Sie „Auftragsplan zeigen“. Flächen haben Nummern und Schraffuren; die Reihenfolge der Schritte steht auf dem Blatt, mit einem Strich für jeden Auftrag.</translation>
    </message>
    <message>
        <source>Add the steps in that order with &quot;+ step&quot;, and type the coats of every area into the column. Accents add to the zone below them.</source>
        <translation>Fügen Sie die Schritte in dieser Reihenfolge mit „+ Schritt“ hinzu, und tippen Sie die Aufträge jeder Fläche in die Spalte. Akzente kommen zur Zone darunter hinzu.</translation>
    </message>
    <message>
        <source>A step at the wrong place can be dragged to the right one by its head.</source>
        <translation>Ein Schritt am falschen Platz lässt sich am Kopf an den richtigen ziehen.</translation>
    </message>
    <message>
        <source>Hand in when the table says what the sheet says.</source>
        <translation>Geben Sie ab, wenn die Tabelle sagt, was das Blatt sagt.</translation>
    </message>
    <message>
        <source>Two halves of a disc differ in value alone. Say which one is lighter. The difference shrinks as you go, until you can only just tell: that is your threshold.</source>
        <translation>Zwei Hälften einer Scheibe unterscheiden sich nur in der Helligkeit. Sagen Sie, welche heller ist. Der Unterschied schrumpft, bis Sie ihn gerade noch erkennen: Das ist Ihre Schwelle.</translation>
    </message>
    <message>
        <source>Keep the light in the room as it is, and sit as you do at work.</source>
        <translation>Lassen Sie das Licht im Raum, wie es ist, und sitzen Sie wie bei der Arbeit.</translation>
    </message>
    <message>
        <source>Left arrow or a click on the left half: the left is lighter. Right arrow: the right.</source>
        <translation>Pfeil links oder ein Klick auf die linke Hälfte: Die linke ist heller. Pfeil rechts: die rechte.</translation>
    </message>
    <message>
        <source>Where you cannot tell, guess: guesses are part of the method. A finger slipped? Backspace takes the last answer back.</source>
        <translation>Wo Sie es nicht erkennen, raten Sie: Raten gehört zum Verfahren. Verdrückt? Die Rücktaste nimmt die letzte Antwort zurück.</translation>
    </message>
    <message>
        <source>It ends by itself when your threshold is known to a fifth: mostly after 200 to 500 pairs, 4 to 8 minutes. You may stop before; it is then less certain.</source>
        <translation>Es endet von selbst, wenn Ihre Schwelle auf ein Fünftel bekannt ist: meist nach 200 bis 500 Paaren, 4 bis 8 Minuten. Sie dürfen früher aufhören; dann ist es weniger sicher.</translation>
    </message>
    <message>
        <source>This crown was planned well and came out otherwise. One thing went wrong on the way. Find out which, from the sintered look alone.</source>
        <translation>Diese Krone war gut geplant und wurde anders. Unterwegs ging eine Sache schief. Finden Sie heraus, welche, allein am gesinterten Aussehen.</translation>
    </message>
    <message>
        <source>Accents lie on top of the zones and are asked for, too. Margin band: half a millimetre along the margin. Marginal ridge: the two crests that close the biting surface towards the neighbours. Click the name in the table, then paint.</source>
        <translation>Akzente liegen über den Zonen und werden auch gefragt. Randstreifen: ein halber Millimeter entlang des Kronenrands. Randleiste: die beiden Kämme, die die Kaufläche zu den Nachbarn hin schließen. Klicken Sie in der Tabelle auf den Namen, dann malen Sie.</translation>
    </message>
    <message>
        <source>Accents (margin band, marginal ridges) are asked for from the middle level on.</source>
        <translation>Akzente (Randstreifen, Randleisten) werden ab der mittleren Stufe gefragt.</translation>
    </message>
</context>
<context>
    <name>practice bar</name>
    <message>
        <source>not said yet</source>
        <translation>noch nicht angegeben</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Übung</translation>
    </message>
    <message>
        <source>Share done</source>
        <translation>Erledigter Anteil</translation>
    </message>
    <message>
        <source>A sitting is {minutes} minutes; nothing happens when they are over</source>
        <translation>Eine Sitzung dauert {minutes} Minuten; danach geschieht nichts</translation>
    </message>
    <message>
        <source>less</source>
        <translation>weniger</translation>
    </message>
    <message>
        <source>Show less of the task</source>
        <translation>Weniger von der Aufgabe zeigen</translation>
    </message>
    <message>
        <source>Show the coat map</source>
        <translation>Auftragsplan zeigen</translation>
    </message>
    <message>
        <source>Hand in</source>
        <translation>Abgeben</translation>
    </message>
    <message>
        <source>Score what is there (Ctrl+Return)</source>
        <translation>Bewerten, was da ist (Strg+Eingabe)</translation>
    </message>
    <message>
        <source>stop</source>
        <translation>anhalten</translation>
    </message>
    <message>
        <source>Do not wait for this exercise</source>
        <translation>Nicht auf diese Übung warten</translation>
    </message>
    <message>
        <source>Try it again</source>
        <translation>Noch einmal</translation>
    </message>
    <message>
        <source>Next exercise</source>
        <translation>Nächste Übung</translation>
    </message>
    <message>
        <source>leave practice</source>
        <translation>Übung verlassen</translation>
    </message>
    <message>
        <source>What is to be seen?</source>
        <translation>Was ist zu sehen?</translation>
    </message>
    <message>
        <source>What you see</source>
        <translation>Was Sie sehen</translation>
    </message>
    <message>
        <source>What was done wrong?</source>
        <translation>Was wurde falsch gemacht?</translation>
    </message>
    <message>
        <source>What was done wrong</source>
        <translation>Was falsch gemacht wurde</translation>
    </message>
    <message>
        <source>Show as planned (V)</source>
        <translation>Wie geplant zeigen (V)</translation>
    </message>
    <message>
        <source>Point at the crown to read both colours of a place.</source>
        <translation>Zeigen Sie auf die Krone, um beide Farben einer Stelle abzulesen.</translation>
    </message>
    <message>
        <source>Show as it came out (V)</source>
        <translation>Zeigen, wie sie wurde (V)</translation>
    </message>
    <message>
        <source>what to do</source>
        <translation>was zu tun ist</translation>
    </message>
    <message>
        <source>Show what to do</source>
        <translation>Zeigen, was zu tun ist</translation>
    </message>
</context>
<context>
    <name>practice desk</name>
    <message>
        <source>Not kept for later: {trouble}</source>
        <translation>Nicht aufbewahrt: {trouble}</translation>
    </message>
    <message>
        <source>Instructor&apos;s sheet</source>
        <translation>Blatt für Ausbildende</translation>
    </message>
    <message>
        <source>Saved as {path}.</source>
        <translation>Gespeichert als {path}.</translation>
    </message>
</context>
<context>
    <name>practice eye</name>
    <message>
        <source>Two halves of a disc</source>
        <translation>Zwei Hälften einer Scheibe</translation>
    </message>
    <message>
        <source>left is lighter</source>
        <translation>links ist heller</translation>
    </message>
    <message>
        <source>right is lighter</source>
        <translation>rechts ist heller</translation>
    </message>
    <message>
        <source>take back</source>
        <translation>zurücknehmen</translation>
    </message>
    <message>
        <source>Take the last answer back (Backspace)</source>
        <translation>Die letzte Antwort zurücknehmen (Rücktaste)</translation>
    </message>
    <message>
        <source>enough</source>
        <translation>genug</translation>
    </message>
    <message>
        <source>End the test with what is known of the threshold by now</source>
        <translation>Den Test mit dem beenden, was bisher über die Schwelle bekannt ist</translation>
    </message>
    <message>
        <source>How far the test is</source>
        <translation>Wie weit der Test ist</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Which half is lighter?</source>
        <translation>Welche Hälfte ist heller?</translation>
    </message>
    <message>
        <source>pair {count}</source>
        <translation>Paar {count}</translation>
    </message>
    <message>
        <source>Screen, light and tiredness matter: compare only with yourself, on the same screen.</source>
        <translation>Bildschirm, Licht und Müdigkeit spielen mit: Vergleichen Sie nur mit sich selbst, am selben Bildschirm.</translation>
    </message>
    <message>
        <source>You can just tell {threshold:.1f} L* (between {low:.1f} and {high:.1f} with 95 % probability): right in five of six cases.</source>
        <translation>Sie erkennen gerade noch {threshold:.1f} L* (zwischen {low:.1f} und {high:.1f} mit 95 % Wahrscheinlichkeit): richtig in fünf von sechs Fällen.</translation>
    </message>
    <message>
        <source>{count} pairs</source>
        <translation>{count} Paare</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>No difference was told reliably: try again in a calmer light.</source>
        <translation>Kein Unterschied wurde sicher erkannt: Versuchen Sie es in ruhigerem Licht noch einmal.</translation>
    </message>
    <message>
        <source>You tell the smallest step this screen can show: your threshold is below {threshold:.1f} L*.</source>
        <translation>Sie erkennen den kleinsten Unterschied, den dieser Bildschirm zeigen kann: Ihre Schwelle liegt unter {threshold:.1f} L*.</translation>
    </message>
</context>
<context>
    <name>practice list</name>
    <message>
        <source>by how it went</source>
        <translation>nach dem Verlauf</translation>
    </message>
    <message>
        <source>easy</source>
        <translation>leicht</translation>
    </message>
    <message>
        <source>middle</source>
        <translation>mittel</translation>
    </message>
    <message>
        <source>hard</source>
        <translation>schwer</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Übung</translation>
    </message>
    <message>
        <source>Exercises</source>
        <translation>Übungen</translation>
    </message>
    <message>
        <source>Your initials or a code</source>
        <translation>Ihre Initialen oder ein Kürzel</translation>
    </message>
    <message>
        <source>as AB</source>
        <translation>etwa AB</translation>
    </message>
    <message>
        <source>Initials or a code</source>
        <translation>Initialen oder ein Kürzel</translation>
    </message>
    <message>
        <source>Asked once; results are kept under it on this computer. {minutes} minutes a day are enough.</source>
        <translation>Einmal gefragt; Ergebnisse liegen darunter auf diesem Rechner. {minutes} Minuten am Tag genügen.</translation>
    </message>
    <message>
        <source>How hard</source>
        <translation>Wie schwer</translation>
    </message>
    <message>
        <source>All exercises</source>
        <translation>Alle Übungen</translation>
    </message>
    <message>
        <source>how hard</source>
        <translation>wie schwer</translation>
    </message>
    <message>
        <source>open a pack</source>
        <translation>Paket öffnen</translation>
    </message>
    <message>
        <source>save these as a pack</source>
        <translation>als Paket sichern</translation>
    </message>
    <message>
        <source>instructor&apos;s sheet</source>
        <translation>Blatt für Ausbildende</translation>
    </message>
    <message>
        <source>repeats</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Say first whose repeats they are: type initials or a code.</source>
        <translation>Sagen Sie zuerst, wessen Wiederholungen es sind: Initialen oder ein Kürzel eingeben.</translation>
    </message>
    <message>
        <source>Not kept</source>
        <translation>Nicht aufbewahrt</translation>
    </message>
    <message>
        <source>Next: {why}</source>
        <translation>Als Nächstes: {why}</translation>
    </message>
    <message>
        <source>Say who you are, then begin here.</source>
        <translation>Sagen Sie, wer Sie sind, dann beginnen Sie hier.</translation>
    </message>
    <message>
        <source>{ask} About {minutes} minutes.</source>
        <translation>{ask} Etwa {minutes} Minuten.</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Begin: {title}</source>
        <translation>Beginnen: {title}</translation>
    </message>
    <message>
        <source>Open a pack of exercises</source>
        <translation>Übungspaket öffnen</translation>
    </message>
    <message>
        <source>Packs of exercises (*{suffix})</source>
        <translation>Übungspakete (*{suffix})</translation>
    </message>
    <message>
        <source>Save as a pack</source>
        <translation>Als Paket speichern</translation>
    </message>
    <message>
        <source>Not saved</source>
        <translation>Nicht gespeichert</translation>
    </message>
    <message>
        <source>Saved as {path}.</source>
        <translation>Gespeichert als {path}.</translation>
    </message>
    <message>
        <source>not tried yet</source>
        <translation>noch nicht versucht</translation>
    </message>
    <message>
        <source>once, best {best:.0f}</source>
        <translation>einmal, bestes {best:.0f}</translation>
    </message>
    <message>
        <source>{count} times, best {best:.0f}</source>
        <translation>{count}-mal, bestes {best:.0f}</translation>
    </message>
</context>
<context>
    <name>practice making</name>
    <message>
        <source>A new crown is being made</source>
        <translation>Eine neue Krone entsteht</translation>
    </message>
    <message>
        <source>No exercise is open</source>
        <translation>Es ist keine Übung offen</translation>
    </message>
    <message>
        <source>Above, try it again or choose the next one.</source>
        <translation>Versuchen Sie es oben noch einmal, oder wählen Sie die nächste.</translation>
    </message>
</context>
<context>
    <name>practice map</name>
    <message>
        <source>predicting the plan</source>
        <translation>Plan wird vorhergesagt</translation>
    </message>
    <message>
        <source>Coat map of the exercise</source>
        <translation>Auftragsplan der Übung</translation>
    </message>
    <message>
        <source>Page {number} of the coat map</source>
        <translation>Seite {number} des Auftragsplans</translation>
    </message>
</context>
<context>
    <name>practice repeats</name>
    <message>
        <source>These days are common practice. That spacing helps is published for words and facts, not for exercises like these.</source>
        <translation>Diese Tage sind übliche Praxis. Dass Abstände helfen, ist für Wörter und Fakten veröffentlicht, nicht für Übungen wie diese.</translation>
    </message>
    <message>
        <source>Repeats</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>What {trainee} has passed comes back after some days, and again after longer.</source>
        <translation>Was {trainee} bestanden hat, kommt nach einigen Tagen wieder und dann nach längerer Zeit.</translation>
    </message>
    <message>
        <source>Days from one try to the next</source>
        <translation>Tage von einem Versuch zum nächsten</translation>
    </message>
    <message>
        <source>days from one try to the next</source>
        <translation>Tage von einem Versuch zum nächsten</translation>
    </message>
    <message>
        <source>as usual: {days}</source>
        <translation>wie üblich: {days}</translation>
    </message>
</context>
<context>
    <name>practice result</name>
    <message>
        <source>This says how the exercise went, nothing about clinical skill.</source>
        <translation>Das sagt, wie die Übung lief, nichts über klinisches Können.</translation>
    </message>
    <message>
        <source>Score</source>
        <translation>Bewertung</translation>
    </message>
    <message>
        <source>{points:.0f} of 100 points</source>
        <translation>{points:.0f} von 100 Punkten</translation>
    </message>
    <message>
        <source>of 100 points</source>
        <translation>von 100 Punkten</translation>
    </message>
    <message>
        <source>Best</source>
        <translation>Am besten</translation>
    </message>
    <message>
        <source>What cost most</source>
        <translation>Was am meisten gekostet hat</translation>
    </message>
    <message>
        <source>What helps</source>
        <translation>Was hilft</translation>
    </message>
    <message>
        <source>On the crown</source>
        <translation>Auf der Krone</translation>
    </message>
    <message>
        <source>Point by point</source>
        <translation>Punkt für Punkt</translation>
    </message>
    <message>
        <source>as it came out</source>
        <translation>wie es geworden ist</translation>
    </message>
    <message>
        <source>what you handed in</source>
        <translation>was Sie abgegeben haben</translation>
    </message>
    <message>
        <source>where it is off</source>
        <translation>wo es abweicht</translation>
    </message>
    <message>
        <source>as it was planned</source>
        <translation>wie es geplant war</translation>
    </message>
    <message>
        <source>a true answer</source>
        <translation>eine richtige Lösung</translation>
    </message>
    <message>
        <source>step back</source>
        <translation>Schritt zurück</translation>
    </message>
    <message>
        <source>step on</source>
        <translation>Schritt weiter</translation>
    </message>
    <message>
        <source>The bare crown, nothing painted yet.</source>
        <translation>Die ungefärbte Krone, noch nichts aufgetragen.</translation>
    </message>
    <message>
        <source>Step {step} of {steps} is done: {work}</source>
        <translation>Schritt {step} von {steps} ist erledigt: {work}</translation>
    </message>
    <message>
        <source>what slips would do to the true plan</source>
        <translation>was Fehlgriffe mit dem richtigen Plan machen würden</translation>
    </message>
    <message>
        <source>{points:.0f} of {most:.0f}</source>
        <translation>{points:.0f} von {most:.0f}</translation>
    </message>
    <message>
        <source>none off</source>
        <translation>kein Abzug</translation>
    </message>
</context>
<context>
    <name>practice slips</name>
    <message>
        <source>slip</source>
        <translation>Fehlgriff</translation>
    </message>
    <message>
        <source>seen most on</source>
        <translation>am deutlichsten auf</translation>
    </message>
    <message>
        <source>at the worst place</source>
        <translation>an der schlimmsten Stelle</translation>
    </message>
    <message>
        <source>Slips</source>
        <translation>Fehlgriffe</translation>
    </message>
    <message>
        <source>What one slip of the hand would do to this plan, as predicted on the whole crown: the area that changes most, and the largest difference at any place.</source>
        <translation>Was ein Fehlgriff der Hand mit diesem Plan machen würde, an der ganzen Krone vorhergesagt: die Fläche, die sich am meisten ändert, und der größte Unterschied an irgendeiner Stelle.</translation>
    </message>
    <message>
        <source>Slips, the gravest first</source>
        <translation>Fehlgriffe, die schwersten zuerst</translation>
    </message>
    <message>
        <source>Your own slips</source>
        <translation>Ihre eigenen Fehlgriffe</translation>
    </message>
    <message>
        <source>How the plan bears your slips</source>
        <translation>Wie der Plan Ihre Fehlgriffe verträgt</translation>
    </message>
    <message>
        <source>Figures of the hand are assumed until you change them. Brushing over a border is in the table, not in the days.</source>
        <translation>Zahlen zur Hand sind angenommen, bis Sie sie ändern. Über eine Grenze pinseln steht in der Tabelle, nicht in den Tagen.</translation>
    </message>
    <message>
        <source>Predicting slips</source>
        <translation>Fehlgriffe werden vorhergesagt</translation>
    </message>
    <message>
        <source>Crowns of ten with a miscounted coat</source>
        <translation>Kronen von zehn mit verzähltem Auftrag</translation>
    </message>
    <message>
        <source>Crowns of ten with a jar mixed wrong</source>
        <translation>Kronen von zehn mit falsch gemischtem Napf</translation>
    </message>
    <message>
        <source>How much a coat differs, percent</source>
        <translation>Wie sehr ein Auftrag schwankt, Prozent</translation>
    </message>
    <message>
        <source>Of ten crowns, a coat miscounted on</source>
        <translation>Von zehn Kronen: Auftrag verzählt bei</translation>
    </message>
    <message>
        <source>a jar mixed wrong on</source>
        <translation>Napf falsch gemischt bei</translation>
    </message>
    <message>
        <source>coats differ by, %</source>
        <translation>Aufträge schwanken um, %</translation>
    </message>
    <message>
        <source>{phrase}, {share:.0f} % done.</source>
        <translation>{phrase}, {share:.0f} % erledigt.</translation>
    </message>
    <message>
        <source>predicting the plan</source>
        <translation>Plan wird vorhergesagt</translation>
    </message>
    <message>
        <source>predicting slips</source>
        <translation>Fehlgriffe werden vorhergesagt</translation>
    </message>
    <message>
        <source>Nothing is painted yet, so nothing can slip.</source>
        <translation>Noch ist nichts aufgetragen, also kann nichts danebengehen.</translation>
    </message>
    <message>
        <source>Counting days</source>
        <translation>Tage werden gezählt</translation>
    </message>
    <message>
        <source>Of {days} simulated days with such a hand {survived} % keep every area within what most accept. Weakest is the {area}: {usual:.1f} dE00 off on half of the days, {bad:.1f} on one of twenty.</source>
        <translation>Von {days} simulierten Tagen mit einer solchen Hand halten {survived} % jede Fläche in dem, was die meisten akzeptieren. Am schwächsten: {area}, {usual:.1f} dE00 daneben an der Hälfte der Tage, {bad:.1f} an einem von zwanzig.</translation>
    </message>
    <message>
        <source>The plan you handed in keeps them on {there} %: about as robust.</source>
        <translation>Der abgegebene Plan hält sie an {there} %: etwa gleich robust.</translation>
    </message>
    <message>
        <source>The plan you handed in keeps them on {there} %: it is the more fragile one.</source>
        <translation>Der abgegebene Plan hält sie an {there} %: Er ist der empfindlichere.</translation>
    </message>
    <message>
        <source>The plan you handed in keeps them on {there} %: it is the more robust one.</source>
        <translation>Der abgegebene Plan hält sie an {there} %: Er ist der robustere.</translation>
    </message>
</context>
<context>
    <name>practice window</name>
    <message>
        <source>Practice: leave it to open something else.</source>
        <translation>Übung: Verlassen Sie sie, um etwas anderes zu öffnen.</translation>
    </message>
    <message>
        <source>Score</source>
        <translation>Bewertung</translation>
    </message>
    <message>
        <source>Hand in</source>
        <translation>Abgeben</translation>
    </message>
    <message>
        <source>As planned, as it came out</source>
        <translation>Wie geplant, wie sie wurde</translation>
    </message>
    <message>
        <source>The crown is being made.</source>
        <translation>Die Krone wird gemacht.</translation>
    </message>
    <message>
        <source>Making an exercise</source>
        <translation>Übung wird gemacht</translation>
    </message>
    <message>
        <source>Stopped: the exercise was not made.</source>
        <translation>Angehalten: Die Übung wurde nicht gemacht.</translation>
    </message>
    <message>
        <source>Scoring</source>
        <translation>Wird bewertet</translation>
    </message>
    <message>
        <source>Not kept for later: {trouble}</source>
        <translation>Nicht aufbewahrt: {trouble}</translation>
    </message>
    <message>
        <source>look at an answer</source>
        <translation>eine Lösung ansehen</translation>
    </message>
    <message>
        <source>Point at the crown to read both colours of a place.</source>
        <translation>Zeigen Sie auf die Krone, um beide Farben einer Stelle abzulesen.</translation>
    </message>
    <message>
        <source>Came out {came}; planned {planned}; wall {wall:.1f} mm</source>
        <translation>Tatsächlich {came}; geplant {planned}; Wand {wall:.1f} mm</translation>
    </message>
    <message>
        <source>The coat map is being drawn.</source>
        <translation>Der Auftragsplan wird gezeichnet.</translation>
    </message>
    <message>
        <source>Drawing the coat map</source>
        <translation>Auftragsplan wird gezeichnet</translation>
    </message>
    <message>
        <source>Practice – stainmap</source>
        <translation>Übung – stainmap</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Übung</translation>
    </message>
    <message>
        <source>{coats} on {area}</source>
        <translation>{coats} auf {area}</translation>
    </message>
</context>
<context>
    <name>practising</name>
    <message>
        <source>A repeat is due: {done} of {of}, so that it stays.</source>
        <translation>Eine Wiederholung ist fällig: {done} von {of}, damit es sitzt.</translation>
    </message>
    <message>
        <source>Your weakest skill so far: {skill}.</source>
        <translation>Ihre bisher schwächste Fertigkeit: {skill}.</translation>
    </message>
    <message>
        <source>A skill not tried yet: {skill}.</source>
        <translation>Eine noch nicht versuchte Fertigkeit: {skill}.</translation>
    </message>
    <message>
        <source>You have practised for {minutes:.0f} minutes: a good moment to stop for today.</source>
        <translation>Sie haben {minutes:.0f} Minuten geübt: ein guter Moment, für heute aufzuhören.</translation>
    </message>
</context>
<context>
    <name>predicting</name>
    <message>
        <source>Predicting</source>
        <translation>Vorhersage</translation>
    </message>
</context>
<context>
    <name>printed note</name>
    <message>
        <source>The revision was not noted in {name}: {error}</source>
        <translation>Die Revision wurde nicht in {name} vermerkt: {error}</translation>
    </message>
    <message>
        <source>open elsewhere ({holder})</source>
        <translation>anderswo offen ({holder})</translation>
    </message>
    <message>
        <source>open elsewhere</source>
        <translation>anderswo offen</translation>
    </message>
    <message>
        <source>{name} is {where}: that it was printed is not noted in it.</source>
        <translation>{name} ist {where}: Dass gedruckt wurde, ist darin nicht vermerkt.</translation>
    </message>
    <message>
        <source>{name} was changed since its sheets were made: that they were printed is not noted in it.</source>
        <translation>{name} wurde geändert, seit die Blätter gemacht wurden: Dass sie gedruckt wurden, ist darin nicht vermerkt.</translation>
    </message>
</context>
<context>
    <name>printing flow</name>
    <message>
        <source>Folder for the sheets</source>
        <translation>Ordner für die Blätter</translation>
    </message>
    <message>
        <source>pictures of {name}</source>
        <translation>Bilder von {name}</translation>
    </message>
    <message>
        <source>{name}, page {number}</source>
        <translation>{name}, Seite {number}</translation>
    </message>
    <message>
        <source>Making the sheets</source>
        <translation>Blätter werden gemacht</translation>
    </message>
    <message>
        <source>Writing the sheets</source>
        <translation>Blätter werden geschrieben</translation>
    </message>
    <message>
        <source>The sheets are being made already.</source>
        <translation>Die Blätter werden schon gemacht.</translation>
    </message>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>{count} files</source>
        <translation>{count} Dateien</translation>
    </message>
    <message>
        <source>Wrote {files} into {folder}.</source>
        <translation>{files} in {folder} geschrieben.</translation>
    </message>
    <message>
        <source>Noting what was printed</source>
        <translation>Vermerkt wird, was gedruckt wurde</translation>
    </message>
    <message>
        <source>sheets printed</source>
        <translation>Blätter gedruckt</translation>
    </message>
    <message>
        <source>Sent 1 page to the printer.</source>
        <translation>1 Seite an den Drucker geschickt.</translation>
    </message>
    <message>
        <source>Sent {count} pages to the printer.</source>
        <translation>{count} Seiten an den Drucker geschickt.</translation>
    </message>
    <message>
        <source>The printer cannot be reached. Choose another, or save as PDF.</source>
        <translation>Der Drucker ist nicht erreichbar. Wählen Sie einen anderen, oder speichern Sie als PDF.</translation>
    </message>
    <message>
        <source>Printing the sheets</source>
        <translation>Blätter werden gedruckt</translation>
    </message>
    <message>
        <source>No sheets were made.</source>
        <translation>Es wurden keine Blätter gemacht.</translation>
    </message>
</context>
<context>
    <name>process</name>
    <message>
        <source>{coats_to_saturation} coats to saturation is out of range.</source>
        <translation>{coats_to_saturation} Aufträge bis zur Sättigung liegen außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0.5 to 40; 4 is the usual assumption.</source>
        <translation>Geben Sie 0.5 bis 40 an; 4 ist die übliche Annahme.</translation>
    </message>
    <message>
        <source>A competition of {competition} is out of range.</source>
        <translation>Eine Konkurrenz von {competition} liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0 to 1.</source>
        <translation>Geben Sie 0 bis 1 an.</translation>
    </message>
    <message>
        <source>A hand factor of {hand_factor} is out of range.</source>
        <translation>Ein Handfaktor von {hand_factor} liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0.6 to 1.6.</source>
        <translation>Geben Sie 0.6 bis 1.6 an.</translation>
    </message>
    <message>
        <source>{drops_per_ml:g} drops in a millilitre are out of range.</source>
        <translation>{drops_per_ml:g} Tropfen in einem Milliliter liegen außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Count the drops that fill 1 mL: 5 to 100, usually about 20.</source>
        <translation>Zählen Sie die Tropfen, die 1 mL füllen: 5 bis 100, meist etwa 20.</translation>
    </message>
    <message>
        <source>A film of {film_per_coat_mm:g} mm per coat is out of range.</source>
        <translation>Ein Film von {film_per_coat_mm:g} mm je Auftrag liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0.001 to 1 mm; 0.06 is assumed.</source>
        <translation>Geben Sie 0.001 bis 1 mm an; 0.06 ist angenommen.</translation>
    </message>
    <message>
        <source>{left_in_jar_drops:g} drops left in the jar are out of range.</source>
        <translation>{left_in_jar_drops:g} im Napf bleibende Tropfen liegen außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0 to 50.</source>
        <translation>Geben Sie 0 bis 50 an.</translation>
    </message>
    <message>
        <source>Stained layers of {outer_depth_mm} and {inner_depth_mm} mm are out of range.</source>
        <translation>Gefärbte Schichten von {outer_depth_mm} und {inner_depth_mm} mm liegen außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give more than 0 and at most 2 mm.</source>
        <translation>Geben Sie mehr als 0 und höchstens 2 mm an.</translation>
    </message>
    <message>
        <source>A wicking length of {wicking_mm} mm is out of range.</source>
        <translation>Eine Dochtlänge von {wicking_mm} mm liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0 to 2 mm.</source>
        <translation>Geben Sie 0 bis 2 mm an.</translation>
    </message>
    <message>
        <source>A name of {count} letters is too long for the sheets.</source>
        <translation>Ein Name von {count} Buchstaben ist zu lang für die Blätter.</translation>
    </message>
    <message>
        <source>Give at most {longest_name}.</source>
        <translation>Geben Sie höchstens {longest_name} an.</translation>
    </message>
</context>
<context>
    <name>process dialog</name>
    <message>
        <source>Hand and uptake</source>
        <translation>Hand und Flüssigkeitsaufnahme</translation>
    </message>
    <message>
        <source>A wet hand leaves more in a coat than a dry one. 1.0 is the hand the materials were described with.</source>
        <translation>Eine nasse Hand lässt mit einem Auftrag mehr zurück als eine trockene. 1.0 ist die Hand, mit der die Materialien beschrieben wurden.</translation>
    </message>
    <message>
        <source>Painter</source>
        <translation>Wer aufträgt</translation>
    </message>
    <message>
        <source>as the laboratory calls them</source>
        <translation>wie das Labor sie nennt</translation>
    </message>
    <message>
        <source>Hand factor</source>
        <translation>Handfaktor</translation>
    </message>
    <message>
        <source>assumed until measured</source>
        <translation>angenommen, bis gemessen</translation>
    </message>
    <message>
        <source>Coats to saturation</source>
        <translation>Aufträge bis zur Sättigung</translation>
    </message>
    <message>
        <source>Competition for the same pores</source>
        <translation>Konkurrenz um dieselben Poren</translation>
    </message>
    <message>
        <source>Depth from outside</source>
        <translation>Tiefe von außen</translation>
    </message>
    <message>
        <source>Depth from inside</source>
        <translation>Tiefe von innen</translation>
    </message>
    <message>
        <source>Wicking</source>
        <translation>Dochtwirkung</translation>
    </message>
    <message>
        <source>Competition, 0 to 1</source>
        <translation>Konkurrenz, 0 bis 1</translation>
    </message>
    <message>
        <source>Depth from outside, mm sintered</source>
        <translation>Tiefe von außen, mm gesintert</translation>
    </message>
    <message>
        <source>Depth from inside, mm sintered</source>
        <translation>Tiefe von innen, mm gesintert</translation>
    </message>
    <message>
        <source>Wicking, mm sintered</source>
        <translation>Dochtwirkung, mm gesintert</translation>
    </message>
</context>
<context>
    <name>progress line</name>
    <message>
        <source>Share done</source>
        <translation>Erledigter Anteil</translation>
    </message>
    <message>
        <source>stop</source>
        <translation>anhalten</translation>
    </message>
    <message>
        <source>Stop the work</source>
        <translation>Arbeit anhalten</translation>
    </message>
    <message>
        <source>Progress: {phrase}</source>
        <translation>Fortschritt: {phrase}</translation>
    </message>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
</context>
<context>
    <name>proposing</name>
    <message>
        <source>No zones are proposed for this body, so there is nothing for the sliders to move.</source>
        <translation>Für diesen Körper werden keine Zonen vorgeschlagen, darum haben die Regler nichts zu verschieben.</translation>
    </message>
    <message>
        <source>Paint its zones by hand.</source>
        <translation>Malen Sie seine Zonen von Hand.</translation>
    </message>
</context>
<context>
    <name>reach</name>
    <message>
        <source>save {coats}</source>
        <translation>sparen Sie {coats}</translation>
    </message>
    <message>
        <source>come {gain:.1f} dE00 nearer in all</source>
        <translation>kommen Sie insgesamt {gain:.1f} dE00 näher</translation>
    </message>
    <message>
        <source>Raise it {by:.1f} mm in the block and {does} (estimated at single places).</source>
        <translation>Rücken Sie sie im Rohling {by:.1f} mm höher: So {does} (an einzelnen Stellen geschätzt).</translation>
    </message>
    <message>
        <source>Lower it {by:.1f} mm in the block and {does} (estimated at single places).</source>
        <translation>Rücken Sie sie im Rohling {by:.1f} mm tiefer: So {does} (an einzelnen Stellen geschätzt).</translation>
    </message>
    <message>
        <source>not reachable: stain only lowers value and adds chroma</source>
        <translation>nicht erreichbar: Färbung senkt nur die Helligkeit und erhöht die Sättigung</translation>
    </message>
    <message>
        <source>not reachable in {areas}</source>
        <translation>nicht erreichbar bei {areas}</translation>
    </message>
    <message>
        <source>short of what is wanted in {areas}</source>
        <translation>verfehlt das Ziel bei {areas}</translation>
    </message>
    <message>
        <source>within reach</source>
        <translation>erreichbar</translation>
    </message>
    <message>
        <source>trying {name}</source>
        <translation>{name} wird versucht</translation>
    </message>
</context>
<context>
    <name>reach desk</name>
    <message>
        <source>What can be reached</source>
        <translation>Was erreichbar ist</translation>
    </message>
    <message>
        <source>the bare block</source>
        <translation>der ungefärbte Rohling</translation>
    </message>
</context>
<context>
    <name>reading</name>
    <message>
        <source>The mesh has no faces.</source>
        <translation>Das Netz hat keine Facetten.</translation>
    </message>
    <message>
        <source>Choose another file.</source>
        <translation>Wählen Sie eine andere Datei.</translation>
    </message>
    <message>
        <source>finding the directions</source>
        <translation>die Richtungen werden gesucht</translation>
    </message>
    <message>
        <source>drawing the margin</source>
        <translation>der Kronenrand wird gezogen</translation>
    </message>
    <message>
        <source>{numbers} is no direction.</source>
        <translation>{numbers} ist keine Richtung.</translation>
    </message>
    <message>
        <source>Give three numbers that are not all zero.</source>
        <translation>Geben Sie drei Zahlen an, die nicht alle null sind.</translation>
    </message>
    <message>
        <source>1 tooth is named</source>
        <translation>1 Zahn ist genannt</translation>
    </message>
    <message>
        <source>{count} teeth are named</source>
        <translation>{count} Zähne sind genannt</translation>
    </message>
    <message>
        <source>1 place is shown</source>
        <translation>1 Stelle ist gezeigt</translation>
    </message>
    <message>
        <source>{count} places are shown</source>
        <translation>{count} Stellen sind gezeigt</translation>
    </message>
    <message>
        <source>{named}, and {shown} where units part.</source>
        <translation>{named}, und {shown}, wo Einheiten sich trennen.</translation>
    </message>
    <message>
        <source>Show one place less than there are teeth.</source>
        <translation>Zeigen Sie eine Stelle weniger, als es Zähne sind.</translation>
    </message>
    <message>
        <source>The shape has {count} units, and {named}.</source>
        <translation>Die Form hat {count} Einheiten, und {named}.</translation>
    </message>
    <message>
        <source>Name every tooth of the bridge.</source>
        <translation>Nennen Sie jeden Zahn der Brücke.</translation>
    </message>
    <message>
        <source>{named}, and the shape shows 1 unit.</source>
        <translation>{named}, und die Form zeigt 1 Einheit.</translation>
    </message>
    <message>
        <source>{named}, and the shape shows {count} units.</source>
        <translation>{named}, und die Form zeigt {count} Einheiten.</translation>
    </message>
    <message>
        <source>Name only the teeth that are in this file.</source>
        <translation>Nennen Sie nur die Zähne, die in dieser Datei sind.</translation>
    </message>
</context>
<context>
    <name>reading dialog</name>
    <message>
        <source>{share:.0f} percent sure</source>
        <translation>zu {share:.0f} Prozent sicher</translation>
    </message>
    <message>
        <source>{share:.0f} % sure</source>
        <translation>zu {share:.0f} % sicher</translation>
    </message>
    <message>
        <source>How it was read</source>
        <translation>Wie sie gelesen wurde</translation>
    </message>
    <message>
        <source>What was noticed</source>
        <translation>Was bemerkt wurde</translation>
    </message>
    <message>
        <source>cut off the crown</source>
        <translation>Krone abschneiden</translation>
    </message>
    <message>
        <source>take the whole file again</source>
        <translation>wieder die ganze Datei nehmen</translation>
    </message>
    <message>
        <source>it is right</source>
        <translation>es stimmt</translation>
    </message>
    <message>
        <source>{name}: it is right</source>
        <translation>{name}: es stimmt</translation>
    </message>
</context>
<context>
    <name>reading rows</name>
    <message>
        <source>show the biting side</source>
        <translation>Kauseite zeigen</translation>
    </message>
    <message>
        <source>move it with the brush</source>
        <translation>mit dem Pinsel verschieben</translation>
    </message>
    <message>
        <source>set the wall</source>
        <translation>Wand setzen</translation>
    </message>
    <message>
        <source>show where they part</source>
        <translation>zeigen, wo sie sich trennen</translation>
    </message>
    <message>
        <source>name the teeth</source>
        <translation>Zähne nennen</translation>
    </message>
    <message>
        <source>say the roles</source>
        <translation>Rollen angeben</translation>
    </message>
    <message>
        <source>set the sections</source>
        <translation>Querschnitte setzen</translation>
    </message>
    <message>
        <source>show mesial</source>
        <translation>mesial zeigen</translation>
    </message>
    <message>
        <source>show the outer side</source>
        <translation>Außenseite zeigen</translation>
    </message>
    <message>
        <source>set by you</source>
        <translation>von Ihnen gesetzt</translation>
    </message>
    <message>
        <source>not read</source>
        <translation>nicht gelesen</translation>
    </message>
    <message>
        <source>a guess, please check</source>
        <translation>eine Vermutung, bitte prüfen</translation>
    </message>
    <message>
        <source>likely</source>
        <translation>wahrscheinlich</translation>
    </message>
    <message>
        <source>sure</source>
        <translation>sicher</translation>
    </message>
    <message>
        <source>A crown with its inner surface.</source>
        <translation>Eine Krone mit Innenfläche.</translation>
    </message>
    <message>
        <source>A bridge of {count} units.</source>
        <translation>Eine Brücke aus {count} Einheiten.</translation>
    </message>
    <message>
        <source>A solid crown: it has no inner surface, so a wall is assumed.</source>
        <translation>Eine massive Krone: Sie hat keine Innenfläche, darum wird eine Wand angenommen.</translation>
    </message>
    <message>
        <source>A single sheet: it has no inner surface, so a wall is assumed.</source>
        <translation>Eine einzelne Fläche: Sie hat keine Innenfläche, darum wird eine Wand angenommen.</translation>
    </message>
    <message>
        <source>A tooth with its roots. The crown can be cut off.</source>
        <translation>Ein Zahn mit Wurzeln. Die Krone kann abgeschnitten werden.</translation>
    </message>
    <message>
        <source>A jaw, or a piece of one. The crown that is meant can be cut off.</source>
        <translation>Ein Kiefer oder ein Stück davon. Die gemeinte Krone kann abgeschnitten werden.</translation>
    </message>
    <message>
        <source>Several bodies, of which the largest was read.</source>
        <translation>Mehrere Körper, von denen der größte gelesen wurde.</translation>
    </message>
    <message>
        <source>Nothing that could be read as a crown.</source>
        <translation>Nichts, was als Krone zu lesen wäre.</translation>
    </message>
    <message>
        <source>Part of the file was cut away.</source>
        <translation>Ein Teil der Datei wurde weggeschnitten.</translation>
    </message>
    <message>
        <source>{occlusal} side</source>
        <translation>{occlusal}e Seite</translation>
    </message>
    <message>
        <source>Margin</source>
        <translation>Kronenrand</translation>
    </message>
    <message>
        <source>Inner surface</source>
        <translation>Innenfläche</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>Roles</source>
        <translation>Rollen</translation>
    </message>
    <message>
        <source>Connectors</source>
        <translation>Verbinder</translation>
    </message>
    <message>
        <source>Mesial</source>
        <translation>Mesial</translation>
    </message>
    <message>
        <source>The shape does not tell.</source>
        <translation>Die Form sagt es nicht.</translation>
    </message>
    <message>
        <source>{axis} of the file</source>
        <translation>{axis} der Datei</translation>
    </message>
    <message>
        <source>Along {name}.</source>
        <translation>Entlang {name}.</translation>
    </message>
    <message>
        <source>{off:.0f}° from {name}.</source>
        <translation>{off:.0f}° von {name}.</translation>
    </message>
    <message>
        <source>Follows from mesial and the tooth number.</source>
        <translation>Folgt aus mesial und der Zahnnummer.</translation>
    </message>
    <message>
        <source>the border of the sheet</source>
        <translation>den Rand der Fläche</translation>
    </message>
    <message>
        <source>the edge of the cavity</source>
        <translation>die Kante der Höhlung</translation>
    </message>
    <message>
        <source>the crease of the base</source>
        <translation>die Kante des Bodens</translation>
    </message>
    <message>
        <source>None was found.</source>
        <translation>Keiner wurde gefunden.</translation>
    </message>
    <message>
        <source>{length:.1f} mm, along {where}.</source>
        <translation>{length:.1f} mm, entlang: {where}.</translation>
    </message>
    <message>
        <source>None: a wall of {wall:.2f} mm is assumed.</source>
        <translation>Keine: Eine Wand von {wall:.2f} mm wird angenommen.</translation>
    </message>
    <message>
        <source>{cavity:.0f} mm², and a rim of {rim:.0f} mm².</source>
        <translation>{cavity:.0f} mm² und ein Saum von {rim:.0f} mm².</translation>
    </message>
    <message>
        <source>{numbers}, one unit.</source>
        <translation>{numbers}, eine Einheit.</translation>
    </message>
    <message>
        <source>None was measured.</source>
        <translation>Keiner wurde gemessen.</translation>
    </message>
</context>
<context>
    <name>recent files</name>
    <message>
        <source>Nothing has been opened yet</source>
        <translation>Noch wurde nichts geöffnet</translation>
    </message>
    <message>
        <source>&amp;Forget these</source>
        <translation>Liste &amp;vergessen</translation>
    </message>
</context>
<context>
    <name>recovery</name>
    <message>
        <source>reading what was kept</source>
        <translation>das Aufbewahrte wird gelesen</translation>
    </message>
    <message>
        <source>What was kept of it is damaged.</source>
        <translation>Was davon aufbewahrt wurde, ist beschädigt.</translation>
    </message>
    <message>
        <source>Open the case as it was last saved.</source>
        <translation>Öffnen Sie den Fall, wie er zuletzt gespeichert wurde.</translation>
    </message>
    <message>
        <source>{name} is not what was kept.</source>
        <translation>{name} ist nicht, was aufbewahrt wurde.</translation>
    </message>
</context>
<context>
    <name>recovery desk</name>
    <message>
        <source>Unsaved work</source>
        <translation>Nicht gespeicherte Arbeit</translation>
    </message>
    <message>
        <source>The program ended without saving. This was kept; what is opened counts as not saved until it is saved.</source>
        <translation>Das Programm endete, ohne zu speichern. Dies wurde aufbewahrt; was geöffnet wird, gilt als nicht gespeichert, bis es gespeichert ist.</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Öffnen</translation>
    </message>
    <message>
        <source>Throw away</source>
        <translation>Wegwerfen</translation>
    </message>
    <message>
        <source>Later</source>
        <translation>Später</translation>
    </message>
    <message>
        <source>{label}, never saved</source>
        <translation>{label}, nie gespeichert</translation>
    </message>
    <message>
        <source>{label}, saved last as {file}</source>
        <translation>{label}, zuletzt als {file} gespeichert</translation>
    </message>
    <message>
        <source>Unsaved work cannot be kept</source>
        <translation>Ungespeicherte Arbeit kann nicht aufbewahrt werden</translation>
    </message>
    <message>
        <source>{problem} Save the case now and then: after a crash only its file would be left.</source>
        <translation>{problem} Speichern Sie den Fall ab und zu: Nach einem Absturz bliebe nur seine Datei.</translation>
    </message>
    <message>
        <source>Unsaved work is kept again.</source>
        <translation>Ungespeicherte Arbeit wird wieder aufbewahrt.</translation>
    </message>
</context>
<context>
    <name>relief</name>
    <message>
        <source>reading the relief</source>
        <translation>das Relief wird gelesen</translation>
    </message>
</context>
<context>
    <name>row</name>
    <message>
        <source>tooth {number}</source>
        <translation>Zahn {number}</translation>
    </message>
    <message>
        <source>This body has no neck and no crest, so it has no place in the row.</source>
        <translation>Dieser Körper hat keinen Hals und keinen Kamm, darum hat er keinen Platz in der Reihe.</translation>
    </message>
    <message>
        <source>Look at it in another look.</source>
        <translation>Betrachten Sie ihn in einer anderen Ansicht.</translation>
    </message>
    <message>
        <source>Which side is mesial is not known, so its neighbours have no side to stand on.</source>
        <translation>Welche Seite mesial ist, ist nicht bekannt, darum haben seine Nachbarn keine Seite zum Stehen.</translation>
    </message>
    <message>
        <source>Say where mesial is (menu Crown).</source>
        <translation>Zeigen Sie, wo mesial ist (Menü Krone).</translation>
    </message>
    <message>
        <source>Nothing of unit {number} lies above its margin.</source>
        <translation>Von Einheit {number} liegt nichts über ihrem Kronenrand.</translation>
    </message>
    <message>
        <source>Look at margin and units (menu Crown).</source>
        <translation>Prüfen Sie Kronenrand und Einheiten (Menü Krone).</translation>
    </message>
</context>
<context>
    <name>row card</name>
    <message>
        <source>Steps to the neighbours</source>
        <translation>Unterschiede zu den Nachbarn</translation>
    </message>
    <message>
        <source>Value alone</source>
        <translation>Nur Helligkeit</translation>
    </message>
    <message>
        <source>Without colour (V)</source>
        <translation>Ohne Farbe (V)</translation>
    </message>
    <message>
        <source>Neighbours...</source>
        <translation>Nachbarn...</translation>
    </message>
    <message>
        <source>Meshes of the neighbours</source>
        <translation>Netze der Nachbarn</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Stop making the neighbours</source>
        <translation>Nachbarn nicht weiter machen</translation>
    </message>
    <message>
        <source>{area} less that of {number}: L* {lightness}, C* {chroma}</source>
        <translation>{area} minus {number}: L* {lightness}, C* {chroma}</translation>
    </message>
    <message>
        <source>crown less neighbour</source>
        <translation>Krone minus Nachbar</translation>
    </message>
</context>
<context>
    <name>row desk</name>
    <message>
        <source>making the neighbours</source>
        <translation>Nachbarn werden gemacht</translation>
    </message>
    <message>
        <source>grey neighbours: nothing is wanted yet</source>
        <translation>graue Nachbarn: Noch ist nichts gewünscht</translation>
    </message>
    <message>
        <source>light is being worked out</source>
        <translation>Licht wird ausgerechnet</translation>
    </message>
    <message>
        <source>stopped; choose the look again to go on</source>
        <translation>angehalten; wählen Sie die Ansicht wieder</translation>
    </message>
    <message>
        <source>no neighbours: see the status line</source>
        <translation>keine Nachbarn: siehe Statuszeile</translation>
    </message>
    <message>
        <source>Making the neighbours</source>
        <translation>Nachbarn werden gemacht</translation>
    </message>
    <message>
        <source>grey neighbours: the wanted colour</source>
        <translation>graue Nachbarn: die gewünschte Farbe</translation>
    </message>
    <message>
        <source>steps to the neighbours</source>
        <translation>Unterschiede zu den Nachbarn</translation>
    </message>
    <message>
        <source>Steps to the neighbours</source>
        <translation>Unterschiede zu den Nachbarn</translation>
    </message>
    <message>
        <source>neighbours from numbers: nobody&apos;s teeth</source>
        <translation>Nachbarn aus Zahlen: niemandes Zähne</translation>
    </message>
    <message>
        <source>{numbers} from numbers: nobody&apos;s teeth</source>
        <translation>{numbers} aus Zahlen: niemandes Zähne</translation>
    </message>
    <message>
        <source>coloured by the shades given of them</source>
        <translation>gefärbt nach ihren angegebenen Farben</translation>
    </message>
    <message>
        <source>coloured by their own shade or the wanted one</source>
        <translation>gefärbt nach eigener Farbe oder dem Ziel</translation>
    </message>
    <message>
        <source>coloured as is wanted of the crown, under D65</source>
        <translation>gefärbt nach dem Ziel der Krone, unter D65</translation>
    </message>
    <message>
        <source>light at the back {percent:.0f} %; seen from 600 mm</source>
        <translation>Licht hinten {percent:.0f} %; gesehen aus 600 mm</translation>
    </message>
</context>
<context>
    <name>row dialog</name>
    <message>
        <source>made from numbers</source>
        <translation>aus Zahlen gemacht</translation>
    </message>
    <message>
        <source>Neighbours in the row</source>
        <translation>Nachbarn in der Reihe</translation>
    </message>
    <message>
        <source>A neighbour is made from numbers, as nobody has it, or read from a mesh. A mesh that was exported beside the crown, in the same coordinates, stays where it stands; others are stood in the arch.</source>
        <translation>Ein Nachbar wird aus Zahlen gemacht, wie ihn niemand hat, oder aus einem Netz gelesen. Ein Netz, das neben der Krone in denselben Koordinaten exportiert wurde, bleibt, wo es steht; andere werden in den Zahnbogen gestellt.</translation>
    </message>
    <message>
        <source>Open a mesh...</source>
        <translation>Netz öffnen...</translation>
    </message>
    <message>
        <source>Make it</source>
        <translation>Machen</translation>
    </message>
    <message>
        <source>Open a mesh of {number}</source>
        <translation>Netz von {number} öffnen</translation>
    </message>
    <message>
        <source>Make {number} from numbers</source>
        <translation>{number} aus Zahlen machen</translation>
    </message>
    <message>
        <source>Mesh of {number}</source>
        <translation>Netz von {number}</translation>
    </message>
    <message>
        <source>Meshes ({endings});;All files (*)</source>
        <translation>Netze ({endings});;Alle Dateien (*)</translation>
    </message>
</context>
<context>
    <name>row teeth</name>
    <message>
        <source>How the tooth in {name} stands cannot be told from its shape.</source>
        <translation>Wie der Zahn in {name} steht, sagt seine Form nicht.</translation>
    </message>
    <message>
        <source>Export it where it stands beside the crown, in the same coordinates.</source>
        <translation>Exportieren Sie ihn, wo er neben der Krone steht, in denselben Koordinaten.</translation>
    </message>
    <message>
        <source>carving the surface</source>
        <translation>die Fläche wird geformt</translation>
    </message>
    <message>
        <source>meshing the outer surface</source>
        <translation>die Außenfläche wird vernetzt</translation>
    </message>
    <message>
        <source>noting zones</source>
        <translation>Zonen werden vermerkt</translation>
    </message>
</context>
<context>
    <name>run desk</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>change what is mixed</source>
        <translation>ändern, was gemischt wird</translation>
    </message>
    <message>
        <source>The plan paints connectors and embrasures already.</source>
        <translation>Der Plan färbt Verbinder und Interdentalräume schon.</translation>
    </message>
    <message>
        <source>accent over the connectors</source>
        <translation>Akzent über die Verbinder</translation>
    </message>
    <message>
        <source>state on the bench</source>
        <translation>Stand der Arbeit</translation>
    </message>
    <message>
        <source>State on the bench: {done}.</source>
        <translation>Stand der Arbeit: {done}.</translation>
    </message>
</context>
<context>
    <name>run strip</name>
    <message>
        <source>Open a crown to see how long it takes.</source>
        <translation>Öffnen Sie eine Krone, um zu sehen, wie lange es dauert.</translation>
    </message>
    <message>
        <source>Run</source>
        <translation>Ablauf</translation>
    </message>
    <message>
        <source>{stage} {minutes} from {start:%H:%M}</source>
        <translation>{stage} {minutes} ab {start:%H:%M}</translation>
    </message>
    <message>
        <source>ready {day} {end:%H:%M}</source>
        <translation>fertig {day} {end:%H:%M}</translation>
    </message>
    <message>
        <source>lengths not to scale</source>
        <translation>nicht maßstäblich</translation>
    </message>
    <message>
        <source>{stage}, {minutes}: open its page</source>
        <translation>{stage}, {minutes}: Seite öffnen</translation>
    </message>
    <message>
        <source>in the furnace</source>
        <translation>im Ofen</translation>
    </message>
    <message>
        <source>ready {day},</source>
        <translation>fertig {day},</translation>
    </message>
    <message>
        <source>if started now, {start:%H:%M}</source>
        <translation>bei Beginn jetzt, {start:%H:%M}</translation>
    </message>
    <message>
        <source>today</source>
        <translation>heute</translation>
    </message>
    <message>
        <source>tomorrow</source>
        <translation>morgen</translation>
    </message>
    <message>
        <source>in {days} days</source>
        <translation>in {days} Tagen</translation>
    </message>
</context>
<context>
    <name>said</name>
    <message>
        <source>Buccal cannot point along the occlusal axis.</source>
        <translation>Bukkal kann nicht entlang der Kauachse zeigen.</translation>
    </message>
    <message>
        <source>There are {count} connectors.</source>
        <translation>Es gibt {count} Verbinder.</translation>
    </message>
    <message>
        <source>A connector of that section is out of range.</source>
        <translation>Ein Verbinder mit diesem Querschnitt liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give {low:g} to {high:g} mm2.</source>
        <translation>Geben Sie {low:g} bis {high:g} mm2 an.</translation>
    </message>
</context>
<context>
    <name>saving flow</name>
    <message>
        <source>Save the case</source>
        <translation>Fall speichern</translation>
    </message>
    <message>
        <source>Cases (*{suffix})</source>
        <translation>Fälle (*{suffix})</translation>
    </message>
    <message>
        <source>Saved as {path}.</source>
        <translation>Gespeichert als {path}.</translation>
    </message>
    <message>
        <source>Save it under another name now?</source>
        <translation>Jetzt unter einem anderen Namen speichern?</translation>
    </message>
    <message>
        <source>What you have made is kept meanwhile, and is there again after the next start.</source>
        <translation>Was Sie gemacht haben, wird inzwischen aufbewahrt und ist nach dem nächsten Start wieder da.</translation>
    </message>
    <message>
        <source>Not saved</source>
        <translation>Nicht gespeichert</translation>
    </message>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Export</translation>
    </message>
    <message>
        <source>Not exported</source>
        <translation>Nicht exportiert</translation>
    </message>
    <message>
        <source>Exported {exporting}.</source>
        <translation>{exporting} exportiert.</translation>
    </message>
    <message>
        <source>The case has changes that are not saved.</source>
        <translation>Der Fall hat Änderungen, die nicht gespeichert sind.</translation>
    </message>
</context>
<context>
    <name>scene</name>
    <message>
        <source>The case does not say what lies behind the crown.</source>
        <translation>Der Fall sagt nicht, was hinter der Krone liegt.</translation>
    </message>
    <message>
        <source>Choose a stump.</source>
        <translation>Wählen Sie einen Stumpf.</translation>
    </message>
</context>
<context>
    <name>score</name>
    <message>
        <source>Nothing is missing.</source>
        <translation>Nichts fehlt.</translation>
    </message>
    <message>
        <source>A beginning is made: look at the true answer, then try again.</source>
        <translation>Ein Anfang ist gemacht: Sehen Sie die richtige Lösung an, dann versuchen Sie es noch einmal.</translation>
    </message>
</context>
<context>
    <name>scoring</name>
    <message>
        <source>block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>The block is the one that was there, and it does not do.</source>
        <translation>Der Rohling ist der, der schon da war, und der genügt nicht.</translation>
    </message>
    <message>
        <source>{block} is of another strength class than was asked about.</source>
        <translation>{block} ist von anderer Festigkeitsklasse als gefragt war.</translation>
    </message>
    <message>
        <source>On {block} the body comes within {de00:.1f} dE00 of what is wanted {coats}; bare it is L* {bare:.1f}.</source>
        <translation>Auf {block} kommt der Körper {coats} bis auf {de00:.1f} dE00 an das Ziel; ungefärbt hat er L* {bare:.1f}.</translation>
    </message>
    <message>
        <source>On {block} it comes within {de00:.1f} {coats}.</source>
        <translation>Auf {block} kommt er {coats} bis auf {de00:.1f} heran.</translation>
    </message>
    <message>
        <source>coats it takes</source>
        <translation>nötige Aufträge</translation>
    </message>
    <message>
        <source>nothing bare</source>
        <translation>nichts ungefärbt</translation>
    </message>
    <message>
        <source>all connectors</source>
        <translation>alle Verbinder</translation>
    </message>
    <message>
        <source>There is no connector.</source>
        <translation>Es gibt keinen Verbinder.</translation>
    </message>
    <message>
        <source>{count} of {all} connectors are painted over their whole surface.</source>
        <translation>{count} von {all} Verbindern sind ganz gefärbt.</translation>
    </message>
    <message>
        <source>few jars and coats</source>
        <translation>wenige Näpfe und Aufträge</translation>
    </message>
    <message>
        <source>What was right from the start is so still.</source>
        <translation>Was von Anfang an stimmte, stimmt noch.</translation>
    </message>
    <message>
        <source>It was right before. {how}</source>
        <translation>Vorher stimmte es. {how}</translation>
    </message>
    <message>
        <source>what was right</source>
        <translation>was stimmte</translation>
    </message>
    <message>
        <source>order</source>
        <translation>Reihenfolge</translation>
    </message>
    <message>
        <source>jars and coats</source>
        <translation>Näpfe und Aufträge</translation>
    </message>
    <message>
        <source>The order is the usual one: deep first, accents last.</source>
        <translation>Die Reihenfolge ist die übliche: das Tiefe zuerst, Akzente zuletzt.</translation>
    </message>
    <message>
        <source>mixing</source>
        <translation>Mischen</translation>
    </message>
    <message>
        <source>The jars are mixed as is usual.</source>
        <translation>Die Näpfe sind wie üblich gemischt.</translation>
    </message>
    <message>
        <source>usual limits</source>
        <translation>übliche Grenzen</translation>
    </message>
    <message>
        <source>No area has more coats than is usual.</source>
        <translation>Keine Fläche hat mehr Aufträge als üblich.</translation>
    </message>
    <message>
        <source>value</source>
        <translation>Helligkeit</translation>
    </message>
    <message>
        <source>not green</source>
        <translation>nicht grün</translation>
    </message>
    <message>
        <source>Every area is judged as if all others were as wanted: a fault counts once, where it was made.</source>
        <translation>Jede Fläche wird so beurteilt, als wären alle anderen wie gewünscht: Ein Fehler zählt einmal, dort, wo er gemacht wurde.</translation>
    </message>
    <message>
        <source>Only a body that is off counts against all of them, as every step starts from it.</source>
        <translation>Nur ein Körper, der danebenliegt, zählt gegen alle, denn jede Stufe geht von ihm aus.</translation>
    </message>
    <message>
        <source>Every coat lies where the map wants it.</source>
        <translation>Jeder Auftrag liegt, wo der Plan ihn will.</translation>
    </message>
    <message>
        <source>The coats agree with the map by {percent:.0f} %; {area} is furthest from it.</source>
        <translation>Die Aufträge stimmen zu {percent:.0f} % mit dem Plan überein; am weitesten davon entfernt ist {area}.</translation>
    </message>
    <message>
        <source>The order is that of the sheet.</source>
        <translation>Die Reihenfolge ist die des Blatts.</translation>
    </message>
    <message>
        <source>{percent:.0f} % of the cells stand in the order of the sheet: what is painted early is taken up first.</source>
        <translation>{percent:.0f} % der Zellen stehen in der Reihenfolge des Blatts: Was früh aufgetragen wird, wird zuerst aufgenommen.</translation>
    </message>
    <message>
        <source>coats as on the map</source>
        <translation>Aufträge wie im Plan</translation>
    </message>
    <message>
        <source>order of the sheet</source>
        <translation>Reihenfolge des Blatts</translation>
    </message>
    <message>
        <source>{cause}.</source>
        <translation>{cause}.</translation>
    </message>
    <message>
        <source>Nothing was said of the cause. In truth: {cause}.</source>
        <translation>Zur Ursache wurde nichts gesagt. In Wahrheit: {cause}.</translation>
    </message>
    <message>
        <source>Your answer was: {said}. In truth: {cause}.</source>
        <translation>Ihre Antwort war: {said}. In Wahrheit: {cause}.</translation>
    </message>
    <message>
        <source>To be seen: {sign}.</source>
        <translation>Zu sehen ist: {sign}.</translation>
    </message>
    <message>
        <source>cause</source>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>what is seen</source>
        <translation>was zu sehen ist</translation>
    </message>
    <message>
        <source>The {name} zone is where it belongs.</source>
        <translation>Zone {name} liegt, wo sie hingehört.</translation>
    </message>
    <message>
        <source>The {name} is where it belongs.</source>
        <translation>{name} liegt, wo es hingehört.</translation>
    </message>
    <message>
        <source>The {name} zone was not found: {missed:.1f} mm² of it.</source>
        <translation>Zone {name} wurde nicht gefunden: {missed:.1f} mm² davon.</translation>
    </message>
    <message>
        <source>The {name} was not found: {missed:.1f} mm² of it.</source>
        <translation>{name} wurde nicht gefunden: {missed:.1f} mm² davon.</translation>
    </message>
    <message>
        <source>The {name} zone overlaps the true one by {percent:.0f} %: {missed:.1f} mm² missed, {extra:.1f} mm² too much.</source>
        <translation>Zone {name} deckt sich zu {percent:.0f} % mit der wahren: {missed:.1f} mm² fehlen, {extra:.1f} mm² sind zu viel.</translation>
    </message>
    <message>
        <source>The {name} overlaps the true one by {percent:.0f} %: {missed:.1f} mm² missed, {extra:.1f} mm² too much.</source>
        <translation>{name} deckt sich zu {percent:.0f} % mit der wahren Fläche: {missed:.1f} mm² fehlen, {extra:.1f} mm² sind zu viel.</translation>
    </message>
    <message>
        <source>without a coat</source>
        <translation>ohne Auftrag</translation>
    </message>
    <message>
        <source>with 1 coat</source>
        <translation>mit 1 Auftrag</translation>
    </message>
    <message>
        <source>with {count} coats</source>
        <translation>mit {count} Aufträgen</translation>
    </message>
    <message>
        <source>It takes no more coats than it must.</source>
        <translation>Er braucht nicht mehr Aufträge als nötig.</translation>
    </message>
    <message>
        <source>The body takes a coat more than on {best}: a lighter start is a longer way.</source>
        <translation>Der Körper braucht einen Auftrag mehr als auf {best}: Wer heller beginnt, hat den weiteren Weg.</translation>
    </message>
    <message>
        <source>The body takes {more} coats more than on {best}: a lighter start is a longer way.</source>
        <translation>Der Körper braucht {more} Aufträge mehr als auf {best}: Wer heller beginnt, hat den weiteren Weg.</translation>
    </message>
    <message>
        <source>{name}: within {bands:.1f} dE00 of the wanted shade.</source>
        <translation>{name}: bis auf {bands:.1f} dE00 an der gewünschten Farbe.</translation>
    </message>
    <message>
        <source>{name}: {bands:.1f} dE00 from the wanted shade ({value} L*, {chroma} C*); 1.0 is near enough.</source>
        <translation>{name}: {bands:.1f} dE00 von der gewünschten Farbe ({value} L*, {chroma} C*); 1.0 ist nah genug.</translation>
    </message>
    <message>
        <source>{name}: its step from the body is as wanted.</source>
        <translation>{name}: Der Unterschied zum Körper ist wie gewünscht.</translation>
    </message>
    <message>
        <source>{name}: it stands beside a body that is off.</source>
        <translation>{name}: Der Körper daneben weicht ab.</translation>
    </message>
    <message>
        <source>{name}: {de00:.1f} dE00 from the wanted colour ({value} L*, {chroma} C*).</source>
        <translation>{name}: {de00:.1f} dE00 von der gewünschten Farbe ({value} L*, {chroma} C*).</translation>
    </message>
    <message>
        <source>{name}: too much chroma against the body by {by_chroma:.1f} C*.</source>
        <translation>{name}: gegen den Körper {by_chroma:.1f} C* zu viel Sättigung.</translation>
    </message>
    <message>
        <source>{name}: too little chroma against the body by {by_chroma:.1f} C*.</source>
        <translation>{name}: gegen den Körper {by_chroma:.1f} C* zu wenig Sättigung.</translation>
    </message>
    <message>
        <source>{name}: too light against the body by {by_value:.1f} L*, {chroma} in C*.</source>
        <translation>{name}: gegen den Körper {by_value:.1f} L* zu hell, {chroma} in C*.</translation>
    </message>
    <message>
        <source>{name}: too dark against the body by {by_value:.1f} L*, {chroma} in C*.</source>
        <translation>{name}: gegen den Körper {by_value:.1f} L* zu dunkel, {chroma} in C*.</translation>
    </message>
    <message>
        <source>Nothing was left bare.</source>
        <translation>Nichts blieb ungefärbt.</translation>
    </message>
    <message>
        <source>{bare:.1f} of {due:.0f} mm² are bare, among them a ring up to {ring:.1f} mm wide; most of it lies in {area}.</source>
        <translation>{bare:.1f} von {due:.0f} mm² sind ungefärbt, darunter ein bis zu {ring:.1f} mm breiter Ring; das meiste davon: {area}.</translation>
    </message>
    <message>
        <source>{bare:.1f} of {due:.0f} mm² are bare; most of it lies in {area}.</source>
        <translation>{bare:.1f} von {due:.0f} mm² sind ungefärbt; das meiste davon: {area}.</translation>
    </message>
    <message>
        <source>{work}; {enough} do it.</source>
        <translation>{work}; {enough} genügen.</translation>
    </message>
    <message>
        <source>{work}, where {enough} do it.</source>
        <translation>{work}, wo {enough} genügen.</translation>
    </message>
    <message>
        <source>{work}: no more than are needed.</source>
        <translation>{work}: nicht mehr als nötig.</translation>
    </message>
    <message>
        <source>Coats are due on {areas} and there are none: left out is out of turn, too.</source>
        <translation>Auf {areas} fehlen fällige Aufträge: Auch Weggelassenes ist außer der Reihe.</translation>
    </message>
    <message>
        <source>{jars} and 1 coat</source>
        <translation>{jars} und 1 Auftrag</translation>
    </message>
    <message>
        <source>{jars} and {coats} coats, all areas together</source>
        <translation>{jars} und {coats} Aufträge, alle Flächen zusammen</translation>
    </message>
    <message>
        <source>Their hue is kept: a* {own}, wanted {wanted}.</source>
        <translation>Ihr Farbton bleibt: a* {own}, Ziel {wanted}.</translation>
    </message>
    <message>
        <source>They turn green: a* {own}, wanted {wanted}. A rosier or a neutral liquid lowers value without that.</source>
        <translation>Sie werden grün: a* {own}, Ziel {wanted}. Eine rötlichere oder neutrale Flüssigkeit senkt die Helligkeit ohne das.</translation>
    </message>
</context>
<context>
    <name>scoring overlay</name>
    <message>
        <source>a zone belongs here</source>
        <translation>hierher gehört eine Zone</translation>
    </message>
    <message>
        <source>this is body</source>
        <translation>das ist Körper</translation>
    </message>
    <message>
        <source>another zone belongs here</source>
        <translation>hierher gehört eine andere Zone</translation>
    </message>
    <message>
        <source>lighter than the true answer by {step:g} L* and more</source>
        <translation>um {step:g} L* und mehr heller als die richtige Lösung</translation>
    </message>
    <message>
        <source>darker than the true answer by {step:g} L* and more</source>
        <translation>um {step:g} L* und mehr dunkler als die richtige Lösung</translation>
    </message>
    <message>
        <source>another hue, by {step:g} dE00 and more</source>
        <translation>anderer Farbton, um {step:g} dE00 und mehr</translation>
    </message>
    <message>
        <source>coats are missing</source>
        <translation>Aufträge fehlen</translation>
    </message>
    <message>
        <source>coats too many</source>
        <translation>zu viele Aufträge</translation>
    </message>
</context>
<context>
    <name>scoring plan</name>
    <message>
        <source>Jar {number} has {drops} drops of dye on {liquid_drops} of liquid; usual are {low} to {high}. Too much thins the coat, too little is not seen.</source>
        <translation>Napf {number} hat {drops} Tropfen Farbstoff auf {liquid_drops} Tropfen Flüssigkeit; üblich sind {low} bis {high}. Zu viel verdünnt den Auftrag, zu wenig sieht man nicht.</translation>
    </message>
    <message>
        <source>{liquid} stands in two jars: it is mixed twice.</source>
        <translation>{liquid} steht in zwei Näpfen: Es wird zweimal gemischt.</translation>
    </message>
</context>
<context>
    <name>section</name>
    <message>
        <source>side 3</source>
        <translation>Seite 3</translation>
    </message>
    <message>
        <source>side 4</source>
        <translation>Seite 4</translation>
    </message>
    <message>
        <source>side 1</source>
        <translation>Seite 1</translation>
    </message>
    <message>
        <source>side 2</source>
        <translation>Seite 2</translation>
    </message>
</context>
<context>
    <name>section window</name>
    <message>
        <source>nothing has been predicted yet</source>
        <translation>noch ist nichts vorhergesagt</translation>
    </message>
    <message>
        <source>Section</source>
        <translation>Schnitt</translation>
    </message>
    <message>
        <source>the plane misses the crown</source>
        <translation>die Ebene verfehlt die Krone</translation>
    </message>
    <message>
        <source>outer surface</source>
        <translation>Außenfläche</translation>
    </message>
    <message>
        <source>inner surface</source>
        <translation>Innenfläche</translation>
    </message>
    <message>
        <source>{side}: wall {wall:.2f} mm, no stain</source>
        <translation>{side}: Wand {wall:.2f} mm, keine Färbung</translation>
    </message>
    <message>
        <source>{side}: wall {wall:.2f} mm, stained {stained:.2f} mm deep, {coats:.1f} coats</source>
        <translation>{side}: Wand {wall:.2f} mm, {stained:.2f} mm tief gefärbt, {coats:.1f} Aufträge</translation>
    </message>
    <message>
        <source>no wall above the margin here</source>
        <translation>hier keine Wand über dem Kronenrand</translation>
    </message>
    <message>
        <source>thinnest wall {wall:.2f} mm, below the block&apos;s minimum {least:.2f}</source>
        <translation>dünnste Wand {wall:.2f} mm, unter dem Mindestmaß {least:.2f} des Rohlings</translation>
    </message>
    <message>
        <source>thinnest wall {wall:.2f} mm, above the block&apos;s minimum {least:.2f}</source>
        <translation>dünnste Wand {wall:.2f} mm, über dem Mindestmaß {least:.2f} des Rohlings</translation>
    </message>
    <message>
        <source>Plane</source>
        <translation>Ebene</translation>
    </message>
    <message>
        <source>Where the plane lies</source>
        <translation>Wo die Ebene liegt</translation>
    </message>
    <message>
        <source>point at the section to read a place</source>
        <translation>auf den Schnitt zeigen, um eine Stelle abzulesen</translation>
    </message>
    <message>
        <source>stained depth: the darker, the more coats. One square is one millimetre.</source>
        <translation>gefärbte Tiefe: je dunkler, desto mehr Aufträge. Ein Kästchen ist ein Millimeter.</translation>
    </message>
</context>
<context>
    <name>session</name>
    <message>
        <source>Opening the mesh</source>
        <translation>Netz wird geöffnet</translation>
    </message>
    <message>
        <source>Reading the crown</source>
        <translation>Krone wird gelesen</translation>
    </message>
    <message>
        <source>read the crown again</source>
        <translation>die Krone neu lesen</translation>
    </message>
    <message>
        <source>Reading the crown again</source>
        <translation>Krone wird neu gelesen</translation>
    </message>
    <message>
        <source>Cutting off the crown</source>
        <translation>Krone wird abgeschnitten</translation>
    </message>
    <message>
        <source>cut off the crown</source>
        <translation>Krone abschneiden</translation>
    </message>
    <message>
        <source>Reading the whole file</source>
        <translation>Ganze Datei wird gelesen</translation>
    </message>
    <message>
        <source>take the whole file</source>
        <translation>die ganze Datei nehmen</translation>
    </message>
    <message>
        <source>Opening the case</source>
        <translation>Fall wird geöffnet</translation>
    </message>
    <message>
        <source>Recovering</source>
        <translation>Wird wiederhergestellt</translation>
    </message>
    <message>
        <source>There is no prediction yet.</source>
        <translation>Noch gibt es keine Vorhersage.</translation>
    </message>
    <message>
        <source>Wait a moment.</source>
        <translation>Warten Sie einen Moment.</translation>
    </message>
    <message>
        <source>Exporting</source>
        <translation>Export</translation>
    </message>
    <message>
        <source>No crown is open.</source>
        <translation>Keine Krone ist offen.</translation>
    </message>
    <message>
        <source>Open a mesh or a case first.</source>
        <translation>Öffnen Sie zuerst ein Netz oder einen Fall.</translation>
    </message>
</context>
<context>
    <name>settings</name>
    <message>
        <source>The settings hold until the program ends; they cannot be kept. {why}</source>
        <translation>Die Einstellungen gelten, bis das Programm endet; sie können nicht aufbewahrt werden. {why}</translation>
    </message>
    <message>
        <source>The window speaks the other language from the next start on.</source>
        <translation>Ab dem nächsten Start spricht das Fenster die andere Sprache.</translation>
    </message>
    <message>
        <source>The window has {percent} % from the next start on.</source>
        <translation>Ab dem nächsten Start hat das Fenster {percent} %.</translation>
    </message>
    <message>
        <source>The open case keeps the volume of a drop that was set for it.</source>
        <translation>Der offene Fall behält das Tropfenvolumen, das für ihn eingestellt wurde.</translation>
    </message>
    <message>
        <source>set the volume of a drop to {volume} mL</source>
        <translation>Tropfenvolumen auf {volume} mL setzen</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Pages of the settings</source>
        <translation>Seiten der Einstellungen</translation>
    </message>
    <message>
        <source>Window</source>
        <translation>Fenster</translation>
    </message>
    <message>
        <source>Laboratory</source>
        <translation>Labor</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>This page as it came</source>
        <translation>Diese Seite wie geliefert</translation>
    </message>
    <message>
        <source>as the desktop has it</source>
        <translation>wie der Desktop</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>the program&apos;s own</source>
        <translation>die des Programms</translation>
    </message>
    <message>
        <source>the desktop&apos;s</source>
        <translation>die des Desktops</translation>
    </message>
    <message>
        <source>as the desktop asks, where it tells</source>
        <translation>wie der Desktop es wünscht</translation>
    </message>
    <message>
        <source>everything turns and folds</source>
        <translation>alles dreht sich und klappt sichtbar</translation>
    </message>
    <message>
        <source>everything is in its place at once</source>
        <translation>alles ist sofort an seinem Platz</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>The surround of the crown stays neutral in all.</source>
        <translation>Die Umgebung der Krone bleibt in allen neutral.</translation>
    </message>
    <message>
        <source>Typeface</source>
        <translation>Schrift</translation>
    </message>
    <message>
        <source>Figures of the program&apos;s own stand below one another in tables.</source>
        <translation>Die Ziffern der eigenen stehen in Tabellen genau untereinander.</translation>
    </message>
    <message>
        <source>Size of text and window</source>
        <translation>Größe von Text und Fenster</translation>
    </message>
    <message>
        <source>Text, fields and drawings alike, from the next start on. The window needs a screen of 1024 x 700 times this.</source>
        <translation>Ab dem nächsten Start. Das Fenster braucht einen Bildschirm von 1024 x 700 mal diesem Wert.</translation>
    </message>
    <message>
        <source>Motion</source>
        <translation>Bewegung</translation>
    </message>
    <message>
        <source>The crown turns to a place within 150 ms, so that the eye can follow, or is there at once.</source>
        <translation>Die Krone dreht sich in 150 ms zu einer Stelle, damit das Auge folgen kann, oder ist sofort dort.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>From the next start on. Paper, exported files, names of materials, the manual and the evidence stay English; numbers keep the point.</source>
        <translation>Ab dem nächsten Start. Papier, Exporte, Materialnamen, Handbuch und Belege bleiben englisch.</translation>
    </message>
    <message>
        <source>°C and °F</source>
        <translation>°C und °F</translation>
    </message>
    <message>
        <source>°C only</source>
        <translation>nur °C</translation>
    </message>
    <message>
        <source>°F only</source>
        <translation>nur °F</translation>
    </message>
    <message>
        <source>the first of the materials</source>
        <translation>das erste der Materialien</translation>
    </message>
    <message>
        <source>Temperatures</source>
        <translation>Temperaturen</translation>
    </message>
    <message>
        <source>In the run, on its pages, and on all sheets.</source>
        <translation>Im Ablauf, auf seinen Seiten und auf allen Blättern.</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>What sheets are shown and saved on, until another is asked.</source>
        <translation>Worauf Blätter gezeigt und gesichert werden, bis ein anderes gewünscht wird.</translation>
    </message>
    <message>
        <source>Volume of a drop</source>
        <translation>Volumen eines Tropfens</translation>
    </message>
    <message>
        <source>How many drops a jar needs goes by it. 0.05 mL is usual, with 15 % of error (USP &lt;1101&gt;). New cases begin with it, and the open one follows unless it has its own.</source>
        <translation>Danach richtet sich die Tropfenzahl eines Napfs. Üblich sind 0.05 mL, ±15 % (USP &lt;1101&gt;). Neue Fälle beginnen damit; der offene folgt, wenn er keinen eigenen Wert hat.</translation>
    </message>
    <message>
        <source>Sintering programme</source>
        <translation>Sinterprogramm</translation>
    </message>
    <message>
        <source>What new cases begin with. A case keeps its own; change that beside its block.</source>
        <translation>Womit neue Fälle beginnen. Ein Fall behält seines; es wird neben seinem Rohling geändert.</translation>
    </message>
    <message>
        <source>Drops counted</source>
        <translation>Gezählte Tropfen</translation>
    </message>
    <message>
        <source>Millilitres they fill</source>
        <translation>Milliliter, die sie füllen</translation>
    </message>
    <message>
        <source> drops fill</source>
        <translation> Tropfen füllen</translation>
    </message>
    <message>
        <source>Take the count</source>
        <translation>Übernehmen</translation>
    </message>
    <message>
        <source>Count the drops of your own pipette into a measure.</source>
        <translation>Zählen Sie die Tropfen Ihrer Pipette in ein Messgefäß.</translation>
    </message>
    <message>
        <source>One drop has {volume} mL.</source>
        <translation>Ein Tropfen hat {volume} mL.</translation>
    </message>
    <message>
        <source>{programme} (not among the materials at hand)</source>
        <translation>{programme} (nicht unter den vorhandenen Materialien)</translation>
    </message>
    <message>
        <source>Find a command or a key</source>
        <translation>Befehl oder Taste suchen</translation>
    </message>
    <message>
        <source>find a command or a key</source>
        <translation>Befehl oder Taste suchen</translation>
    </message>
    <message>
        <source>New key</source>
        <translation>Neue Taste</translation>
    </message>
    <message>
        <source>Give it this key</source>
        <translation>Taste geben</translation>
    </message>
    <message>
        <source>No key</source>
        <translation>Keine Taste</translation>
    </message>
    <message>
        <source>As it came</source>
        <translation>Wie geliefert</translation>
    </message>
    <message>
        <source>All as they came</source>
        <translation>Alle wie geliefert</translation>
    </message>
    <message>
        <source>&amp;New key</source>
        <translation>&amp;Neue Taste</translation>
    </message>
    <message>
        <source>What came of it</source>
        <translation>Was daraus wurde</translation>
    </message>
    <message>
        <source>command</source>
        <translation>Befehl</translation>
    </message>
    <message>
        <source>key</source>
        <translation>Taste</translation>
    </message>
    <message>
        <source>as it came</source>
        <translation>wie geliefert</translation>
    </message>
    <message>
        <source>Commands and their keys</source>
        <translation>Befehle und ihre Tasten</translation>
    </message>
    <message>
        <source>changed</source>
        <translation>geändert</translation>
    </message>
    <message>
        <source>{command} has {key} now.</source>
        <translation>{command} hat jetzt {key}.</translation>
    </message>
    <message>
        <source>{command} has no key now.</source>
        <translation>{command} hat jetzt keine Taste.</translation>
    </message>
    <message>
        <source>Tool &gt; {name}</source>
        <translation>Werkzeug &gt; {name}</translation>
    </message>
    <message>
        <source>A size of {size_percent} % is none of those there are.</source>
        <translation>Eine Größe von {size_percent} % gibt es nicht.</translation>
    </message>
    <message>
        <source>Choose {sizes}.</source>
        <translation>Wählen Sie {sizes}.</translation>
    </message>
    <message>
        <source>A drop of {drop_volume_ml:g} mL is out of range.</source>
        <translation>Ein Tropfen von {drop_volume_ml:g} mL liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0.01 to 0.2 mL; 0.05 is usual.</source>
        <translation>Geben Sie 0.01 bis 0.2 mL an; 0.05 ist üblich.</translation>
    </message>
    <message>
        <source>The name of the programme is too long.</source>
        <translation>Der Name des Programms ist zu lang.</translation>
    </message>
    <message>
        <source>Nothing was counted.</source>
        <translation>Nichts wurde gezählt.</translation>
    </message>
    <message>
        <source>Count the drops that fill 1 mL or more.</source>
        <translation>Zählen Sie die Tropfen, die 1 mL oder mehr füllen.</translation>
    </message>
    <message>
        <source>{drops} drops in {filled_ml:g} mL make {volume:.3g} mL each, which is out of range.</source>
        <translation>{drops} Tropfen in {filled_ml:g} mL machen je {volume:.3g} mL, das liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Count again; drops have 0.01 to 0.2 mL.</source>
        <translation>Zählen Sie noch einmal; Tropfen haben 0.01 bis 0.2 mL.</translation>
    </message>
</context>
<context>
    <name>settings file</name>
    <message>
        <source>it is too large for one</source>
        <translation>sie zu groß dafür ist</translation>
    </message>
    <message>
        <source>it cannot be read, {value}</source>
        <translation>sie nicht gelesen werden kann, {value}</translation>
    </message>
    <message>
        <source>it is damaged</source>
        <translation>sie beschädigt ist</translation>
    </message>
    <message>
        <source>it says nothing usable for {wrong}</source>
        <translation>sie nichts Brauchbares sagt für {wrong}</translation>
    </message>
    <message>
        <source>The defaults are used</source>
        <translation>Die Vorgaben gelten</translation>
    </message>
    <message>
        <source>All others hold</source>
        <translation>Alle anderen gelten</translation>
    </message>
    <message>
        <source>The settings file {path} is left alone, because {why}. {rest}, and what you set holds until the program ends; move the file away to keep settings again.</source>
        <translation>Die Einstellungsdatei {path} bleibt unberührt, weil {why}. {rest}, und was Sie einstellen, gilt, bis das Programm endet; verschieben Sie die Datei, um Einstellungen wieder aufzubewahren.</translation>
    </message>
    <message>
        <source>The settings file was not used as it is, because {why}. {rest}; the file as it was is kept as {kept}.</source>
        <translation>Die Einstellungsdatei wurde nicht verwendet, wie sie ist, weil {why}. {rest}; die Datei, wie sie war, liegt als {kept} daneben.</translation>
    </message>
    <message>
        <source>{problem} New settings cannot be written. {error}</source>
        <translation>{problem} Neue Einstellungen können nicht geschrieben werden. {error}</translation>
    </message>
    <message>
        <source>there are too many of them</source>
        <translation>es sind zu viele</translation>
    </message>
    <message>
        <source>&apos;{name}&apos;, which it does not know</source>
        <translation>„{name}“, das sie nicht kennt</translation>
    </message>
</context>
<context>
    <name>shade row</name>
    <message>
        <source>not read</source>
        <translation>nicht gelesen</translation>
    </message>
    <message>
        <source>tab</source>
        <translation>Farbmuster</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>photograph</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>{name}: how it was read</source>
        <translation>{name}: wie abgelesen</translation>
    </message>
    <message>
        <source>{name}: plus or minus</source>
        <translation>{name}: plus oder minus</translation>
    </message>
    <message>
        <source>{name}: colour on this screen</source>
        <translation>{name}: Farbe auf diesem Bildschirm</translation>
    </message>
    <message>
        <source>cannot be compared</source>
        <translation>nicht vergleichbar</translation>
    </message>
    <message>
        <source>from the picture</source>
        <translation>aus dem Bild</translation>
    </message>
    <message>
        <source>{name}: tab</source>
        <translation>{name}: Farbmuster</translation>
    </message>
</context>
<context>
    <name>shade table</name>
    <message>
        <source>A tab has no name.</source>
        <translation>Ein Farbmuster hat keinen Namen.</translation>
    </message>
    <message>
        <source>Give it one, such as A2.</source>
        <translation>Geben Sie ihm einen, etwa A2.</translation>
    </message>
    <message>
        <source>The doubt of a tab is out of range.</source>
        <translation>Die Unsicherheit eines Farbmusters liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0 to 30.</source>
        <translation>Geben Sie 0 bis 30 an.</translation>
    </message>
    <message>
        <source>There is no tab &apos;{name}&apos;.</source>
        <translation>Ein Farbmuster „{name}“ gibt es nicht.</translation>
    </message>
    <message>
        <source>Choose of {name}.</source>
        <translation>Wählen Sie unter {name}.</translation>
    </message>
</context>
<context>
    <name>shades file</name>
    <message>
        <source>Correct it with a text editor, or take it away: the shipped table holds then.</source>
        <translation>Berichtigen Sie sie mit einem Texteditor, oder nehmen Sie sie weg: Dann gilt die mitgelieferte Tabelle.</translation>
    </message>
    <message>
        <source>This is not a table of shades.</source>
        <translation>Das ist keine Farbtabelle.</translation>
    </message>
    <message>
        <source>One starts with the line: format = &quot;{format_}&quot;.</source>
        <translation>Eine solche beginnt mit der Zeile: format = &quot;{format_}&quot;.</translation>
    </message>
    <message>
        <source>The table of shades has version {get}.</source>
        <translation>Die Farbtabelle hat Version {get}.</translation>
    </message>
    <message>
        <source>This program reads version {version}; a newer program may have written it.</source>
        <translation>Dieses Programm liest Version {version}; ein neueres Programm hat sie vielleicht geschrieben.</translation>
    </message>
    <message>
        <source>An entry does not fit: {error}.</source>
        <translation>Ein Eintrag passt nicht: {error}.</translation>
    </message>
    <message>
        <source>Its tabs were measured under {illuminant}, {observer_degrees} degrees.</source>
        <translation>Ihre Farbmuster wurden unter {illuminant}, {observer_degrees} Grad gemessen.</translation>
    </message>
    <message>
        <source>A tab table holds values under illuminant C and 2 degrees; enter other readings as measured L*a*b*.</source>
        <translation>Eine Tabelle der Farbmuster enthält Werte unter Normlichtart C und 2 Grad; geben Sie andere Messungen als gemessenes L*a*b* ein.</translation>
    </message>
    <message>
        <source>The offset of &apos;{name}&apos; is out of range.</source>
        <translation>Der Abstand von „{name}“ liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give -{largest_offset:g} to {largest_offset:g}.</source>
        <translation>Geben Sie -{largest_offset:g} bis {largest_offset:g} an.</translation>
    </message>
</context>
<context>
    <name>shading work</name>
    <message>
        <source>Looking into the grooves</source>
        <translation>Furchen werden ausgeleuchtet</translation>
    </message>
</context>
<context>
    <name>shape</name>
    <message>
        <source>measuring the wall</source>
        <translation>Wand wird gemessen</translation>
    </message>
    <message>
        <source>preparing the surface</source>
        <translation>Oberfläche wird vorbereitet</translation>
    </message>
    <message>
        <source>measuring curvature</source>
        <translation>Krümmung wird gemessen</translation>
    </message>
</context>
<context>
    <name>sheet preview</name>
    <message>
        <source>Sheets</source>
        <translation>Blätter</translation>
    </message>
    <message>
        <source>Pages</source>
        <translation>Seiten</translation>
    </message>
    <message>
        <source>Paper format</source>
        <translation>Papierformat</translation>
    </message>
    <message>
        <source>1 page, printed in true size.</source>
        <translation>1 Seite, in wahrer Größe gedruckt.</translation>
    </message>
    <message>
        <source>{count} pages, printed in true size.</source>
        <translation>{count} Seiten, in wahrer Größe gedruckt.</translation>
    </message>
    <message>
        <source>Save as PDF...</source>
        <translation>Als PDF speichern...</translation>
    </message>
    <message>
        <source>Save as pictures...</source>
        <translation>Als Bilder speichern...</translation>
    </message>
    <message>
        <source>Print...</source>
        <translation>Drucken...</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
</context>
<context>
    <name>side panels</name>
    <message>
        <source>Plan</source>
        <translation>Plan</translation>
    </message>
    <message>
        <source>coats as painted</source>
        <translation>wie aufgetragen</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>Add a step</source>
        <translation>Schritt hinzufügen</translation>
    </message>
    <message>
        <source>Add a step at the end</source>
        <translation>Schritt am Ende hinzufügen</translation>
    </message>
    <message>
        <source>Suggest coats</source>
        <translation>Vorschlagen</translation>
    </message>
    <message>
        <source>Search for coats that come near what is wanted (Ctrl+G)</source>
        <translation>Aufträge suchen, die dem Ziel nahe kommen (Strg+G)</translation>
    </message>
    <message>
        <source>Value ladder</source>
        <translation>Helligkeitsleiter</translation>
    </message>
    <message>
        <source>Drag to move this panel; double-click to let it float</source>
        <translation>Ziehen verschiebt dieses Feld; ein Doppelklick löst es</translation>
    </message>
</context>
<context>
    <name>side processes</name>
    <message>
        <source>{count} of {count_2} are ready</source>
        <translation>{count} von {count_2} sind fertig</translation>
    </message>
    <message>
        <source>Stopped.</source>
        <translation>Angehalten.</translation>
    </message>
</context>
<context>
    <name>sintering</name>
    <message>
        <source>A coupon needs a thickness and at least one reading.</source>
        <translation>Ein Plättchen braucht eine Dicke und mindestens eine Messung.</translation>
    </message>
    <message>
        <source>Give them.</source>
        <translation>Geben Sie sie an.</translation>
    </message>
    <message>
        <source>By this coupon the programme multiplies scattering by {factor:.2f}, which no cycle does (0.7 to 1.8).</source>
        <translation>Nach diesem Plättchen vervielfacht das Programm die Streuung um {factor:.2f}, was kein Zyklus tut (0.7 bis 1.8).</translation>
    </message>
    <message>
        <source>Check the coupon&apos;s block, thickness and backing.</source>
        <translation>Prüfen Sie Rohling, Dicke und Untergrund des Plättchens.</translation>
    </message>
</context>
<context>
    <name>slips</name>
    <message>
        <source>There is no step {step} in the plan.</source>
        <translation>Einen Schritt {step} gibt es im Plan nicht.</translation>
    </message>
    <message>
        <source>Step {step} has no coats on {area}.</source>
        <translation>Schritt {step} hat keine Aufträge auf {area}.</translation>
    </message>
    <message>
        <source>Choose a cell that is painted.</source>
        <translation>Wählen Sie eine gefärbte Zelle.</translation>
    </message>
    <message>
        <source>{value:g} crowns of ten make no sense.</source>
        <translation>{value:g} Kronen von zehn ergeben keinen Sinn.</translation>
    </message>
    <message>
        <source>Give 0 to 10.</source>
        <translation>Geben Sie 0 bis 10 an.</translation>
    </message>
    <message>
        <source>A hand that differs by {share:.0%} from coat to coat is out of range.</source>
        <translation>Eine Hand, die von Auftrag zu Auftrag um {share:.0%} schwankt, liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give 0 to 50 %.</source>
        <translation>Geben Sie 0 bis 50 % an.</translation>
    </message>
    <message>
        <source>Fired in &apos;{fastest}&apos; instead of &apos;{programme}&apos;</source>
        <translation>In „{fastest}“ statt „{programme}“ gesintert</translation>
    </message>
    <message>
        <source>Step {step}, {liquid}</source>
        <translation>Schritt {step}, {liquid}</translation>
    </message>
    <message>
        <source>{step}: {slip} on {area}</source>
        <translation>{step}: {slip}, {area}</translation>
    </message>
</context>
<context>
    <name>span</name>
    <message>
        <source>measuring connectors</source>
        <translation>Verbinder werden gemessen</translation>
    </message>
    <message>
        <source>Nothing can be cut where the units were said to part.</source>
        <translation>Wo die Einheiten sich trennen sollen, kann nichts geschnitten werden.</translation>
    </message>
    <message>
        <source>Click on the connector itself.</source>
        <translation>Klicken Sie auf den Verbinder selbst.</translation>
    </message>
    <message>
        <source>looking for connectors</source>
        <translation>Verbinder werden gesucht</translation>
    </message>
</context>
<context>
    <name>stage dialogs</name>
    <message>
        <source>Coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>areas</source>
        <translation>Flächen</translation>
    </message>
    <message>
        <source>units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>rounds</source>
        <translation>Runden</translation>
    </message>
    <message>
        <source>minutes</source>
        <translation>Minuten</translation>
    </message>
    <message>
        <source>The plan keeps to it.</source>
        <translation>Der Plan hält sich daran.</translation>
    </message>
    <message>
        <source>All coats take {time}, assumed: a minute of brush for each unit and {soak:g} of soak, in which other units are painted.</source>
        <translation>Alle Aufträge dauern {time}, angenommen: je Einheit eine Minute Pinsel und {soak:g} Einziehen, währenddessen andere Einheiten aufgetragen werden.</translation>
    </message>
    <message>
        <source>Dry</source>
        <translation>Trocknen</translation>
    </message>
    <message>
        <source>Sintering wet work cracks it. One single unit dries 10 min at {temperature}, common practice; 5 min for each further unit and 10 for a bridge are assumed. The makers&apos; instructions for use decide.</source>
        <translation>Nass gesinterte Arbeiten reißen. Eine einzelne Einheit trocknet 10 min bei {temperature}, übliche Praxis; 5 min für jede weitere Einheit und 10 für eine Brücke sind angenommen. Es entscheiden die Gebrauchsanweisungen der Hersteller.</translation>
    </message>
    <message>
        <source>here</source>
        <translation>hier</translation>
    </message>
    <message>
        <source>A furnace with a drying stage of its own: give its programme own_drying_minutes among the laboratory&apos;s materials.</source>
        <translation>Ein Ofen mit eigener Trockenstufe: Geben Sie seinem Programm in den Materialien des Labors own_drying_minutes.</translation>
    </message>
    <message>
        <source>Sinter and cool</source>
        <translation>Sintern und Abkühlen</translation>
    </message>
    <message>
        <source>Programme {name}: {minutes} from cold to opening, {sinter} up to the end of the last hold and {cool} of cooling; by its time it counts as {time_class}.</source>
        <translation>Programm {name}: {minutes} von kalt bis zum Öffnen, {sinter} bis zum Ende der letzten Haltezeit und {cool} Abkühlen; nach seiner Zeit gilt es als {time_class}.</translation>
    </message>
    <message>
        <source>to</source>
        <translation>auf</translation>
    </message>
    <message>
        <source>within</source>
        <translation>in</translation>
    </message>
    <message>
        <source>at</source>
        <translation>nach</translation>
    </message>
    <message>
        <source>per minute</source>
        <translation>je Minute</translation>
    </message>
    <message>
        <source>Do not open above {temperature}. {name}: {strength}. {statement}</source>
        <translation>Nicht über {temperature} öffnen. {name}: {strength}. {statement}</translation>
    </message>
    <message>
        <source>Compare furnaces...</source>
        <translation>Öfen vergleichen...</translation>
    </message>
    <message>
        <source>Furnace curve</source>
        <translation>Ofenkurve</translation>
    </message>
    <message>
        <source>cool</source>
        <translation>Abkühlen</translation>
    </message>
    <message>
        <source>streaks from {area}</source>
        <translation>Streifen aus {area}</translation>
    </message>
    <message>
        <source>brushed by hand</source>
        <translation>von Hand gepinselt</translation>
    </message>
    <message>
        <source>nothing yet</source>
        <translation>noch nichts</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>{units}, a bridge</source>
        <translation>{units}, eine Brücke</translation>
    </message>
    <message>
        <source>where</source>
        <translation>wo</translation>
    </message>
    <message>
        <source>in the furnace, by {programme}</source>
        <translation>im Ofen, durch {programme}</translation>
    </message>
    <message>
        <source>oven, {temperature}</source>
        <translation>Trockenofen, {temperature}</translation>
    </message>
    <message>
        <source>how long</source>
        <translation>wie lange</translation>
    </message>
    <message>
        <source>hold</source>
        <translation>halten</translation>
    </message>
</context>
<context>
    <name>standing</name>
    <message>
        <source>A front tooth without a cavity does not show which way it bites.</source>
        <translation>Ein Frontzahn ohne Höhlung zeigt nicht, welche Seite beißt.</translation>
    </message>
    <message>
        <source>Turn its biting edge up and set that as the occlusal axis, or give the direction toward it as three numbers.</source>
        <translation>Drehen Sie seine Schneide nach oben und setzen Sie das als Kauachse, oder geben Sie die Richtung dahin als drei Zahlen an.</translation>
    </message>
    <message>
        <source>finding the crest</source>
        <translation>der Kamm wird gesucht</translation>
    </message>
    <message>
        <source>measuring heights</source>
        <translation>Höhen werden gemessen</translation>
    </message>
    <message>
        <source>finding the margin</source>
        <translation>der Kronenrand wird gesucht</translation>
    </message>
</context>
<context>
    <name>start</name>
    <message>
        <source>OpenGL 3.3 is missing: the crown turns more coarsely, all else works.</source>
        <translation>OpenGL 3.3 fehlt: Die Krone dreht sich gröber, alles andere geht.</translation>
    </message>
    <message>
        <source>The program&apos;s typeface is missing: install stainmap again to make sheets.</source>
        <translation>Die Schrift des Programms fehlt: Installieren Sie stainmap neu, um Blätter zu machen.</translation>
    </message>
    <message>
        <source>Small screen: panels can be put away in the menu View.</source>
        <translation>Kleiner Bildschirm: Felder lassen sich im Menü Ansicht ausblenden.</translation>
    </message>
</context>
<context>
    <name>start strip</name>
    <message>
        <source>This is a sample, already planned.</source>
        <translation>Das ist ein Muster, schon geplant.</translation>
    </message>
    <message>
        <source>A sample</source>
        <translation>Ein Muster</translation>
    </message>
    <message>
        <source>Guided first plan</source>
        <translation>Geführter erster Plan</translation>
    </message>
    <message>
        <source>Go on with the first plan</source>
        <translation>Ersten Plan fortsetzen</translation>
    </message>
    <message>
        <source>First start</source>
        <translation>Erster Start</translation>
    </message>
    <message>
        <source>Turn it with the right button, point at it to read a colour.</source>
        <translation>Mit der rechten Taste drehen, zum Ablesen einer Farbe darauf zeigen.</translation>
    </message>
    <message>
        <source>Open a mesh</source>
        <translation>Netz öffnen</translation>
    </message>
    <message>
        <source>New practice</source>
        <translation>Neue Übung</translation>
    </message>
    <message>
        <source>Six steps on this window, each done by yourself</source>
        <translation>Sechs Schritte an diesem Fenster, jeder von Ihnen selbst getan</translation>
    </message>
    <message>
        <source>Close this strip</source>
        <translation>Diesen Streifen schließen</translation>
    </message>
</context>
<context>
    <name>status line</name>
    <message>
        <source>Status</source>
        <translation>Status</translation>
    </message>
    <message>
        <source>Under the pointer</source>
        <translation>Unter dem Zeiger</translation>
    </message>
</context>
<context>
    <name>step menu</name>
    <message>
        <source>Step {step}</source>
        <translation>Schritt {step}</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Copy with names</source>
        <translation>Mit Namen kopieren</translation>
    </message>
    <message>
        <source>Cut</source>
        <translation>Ausschneiden</translation>
    </message>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>Add a step after this one</source>
        <translation>Schritt nach diesem hinzufügen</translation>
    </message>
    <message>
        <source>Remove this step</source>
        <translation>Diesen Schritt entfernen</translation>
    </message>
    <message>
        <source>Set these coats free</source>
        <translation>Diese Aufträge freigeben</translation>
    </message>
    <message>
        <source>Lock these coats</source>
        <translation>Diese Aufträge sperren</translation>
    </message>
    <message>
        <source>Paint it earlier</source>
        <translation>Früher auftragen</translation>
    </message>
    <message>
        <source>Paint it later</source>
        <translation>Später auftragen</translation>
    </message>
    <message>
        <source>Take it from</source>
        <translation>Nehmen aus</translation>
    </message>
    <message>
        <source>jar {number}, {liquid}</source>
        <translation>Napf {number}, {liquid}</translation>
    </message>
</context>
<context>
    <name>store</name>
    <message>
        <source>The database did not number a new row.</source>
        <translation>Die Datenbank hat eine neue Zeile nicht nummeriert.</translation>
    </message>
    <message>
        <source>Attempt {row} in the lab book cannot be read ({error}).</source>
        <translation>Versuch {row} im Laborbuch kann nicht gelesen werden ({error}).</translation>
    </message>
    <message>
        <source>Put back a copy of the lab book from before it was changed by hand.</source>
        <translation>Legen Sie eine Kopie des Laborbuchs zurück, von vor der Änderung von Hand.</translation>
    </message>
</context>
<context>
    <name>streaks dialog</name>
    <message>
        <source>towards the margin</source>
        <translation>zum Kronenrand hin</translation>
    </message>
    <message>
        <source>towards the biting edge</source>
        <translation>zur Kaukante hin</translation>
    </message>
    <message>
        <source>Streaks</source>
        <translation>Streifen</translation>
    </message>
    <message>
        <source>A few tapered strokes that carry the coat of a step from one zone into the next, on the facial and on the lingual side. Lengths are sintered mm.</source>
        <translation>Einige zulaufende Striche, die den Auftrag eines Schritts aus einer Zone in die nächste tragen, auf der fazialen und der lingualen Seite. Längen sind gesinterte mm.</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>Add streaks</source>
        <translation>Streifen hinzufügen</translation>
    </message>
    <message>
        <source>from</source>
        <translation>von</translation>
    </message>
    <message>
        <source>they run</source>
        <translation>sie laufen</translation>
    </message>
    <message>
        <source>number</source>
        <translation>Anzahl</translation>
    </message>
    <message>
        <source>coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>This step has no streaks.</source>
        <translation>Dieser Schritt hat keine Streifen.</translation>
    </message>
    <message>
        <source>From {name} nothing leads that way: choose another zone or direction.</source>
        <translation>Von {name} führt dorthin nichts: Wählen Sie eine andere Zone oder Richtung.</translation>
    </message>
    <message>
        <source>From zone</source>
        <translation>Aus Zone</translation>
    </message>
    <message>
        <source>They run</source>
        <translation>Sie laufen</translation>
    </message>
    <message>
        <source>Number of strokes on each side</source>
        <translation>Zahl der Striche auf jeder Seite</translation>
    </message>
    <message>
        <source>Coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>{name}, {low} to {high}</source>
        <translation>{name}, {low} bis {high}</translation>
    </message>
    <message>
        <source>Length in sintered mm</source>
        <translation>Länge in gesinterten mm</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
</context>
<context>
    <name>strength class</name>
    <message>
        <source>Strength class: of the material, after published ranges; what a programme does to it is not predicted. The makers of block and oven decide which cycles are allowed.</source>
        <translation>Festigkeitsklasse: des Materials, nach veröffentlichten Bereichen; was ein Programm damit macht, wird nicht vorhergesagt. Welche Zyklen erlaubt sind, entscheiden die Hersteller von Rohling und Ofen.</translation>
    </message>
    <message>
        <source>spans of four units and more</source>
        <translation>Spannen von vier und mehr Einheiten</translation>
    </message>
    <message>
        <source>spans of up to three units, molars too</source>
        <translation>Spannen bis zu drei Einheiten, auch Molaren</translation>
    </message>
    <message>
        <source>single crowns, and spans of three units up to the second premolar</source>
        <translation>Einzelkronen und Spannen von drei Einheiten bis zum zweiten Prämolaren</translation>
    </message>
    <message>
        <source>single crowns, bonded</source>
        <translation>Einzelkronen, adhäsiv befestigt</translation>
    </message>
    <message>
        <source>{kinds}, {low} to {high} MPa: class {number}, {use}</source>
        <translation>{kinds}, {low} bis {high} MPa: Klasse {number}, {use}</translation>
    </message>
</context>
<context>
    <name>suggest</name>
    <message>
        <source>Nothing can be suggested: {refused}</source>
        <translation>Nichts kann vorgeschlagen werden: {refused}</translation>
    </message>
    <message>
        <source>looking at the areas</source>
        <translation>die Flächen werden betrachtet</translation>
    </message>
    <message>
        <source>Nothing is wanted of this crown yet.</source>
        <translation>Für diese Krone ist noch nichts gewünscht.</translation>
    </message>
    <message>
        <source>Say what is wanted, then coats can be suggested.</source>
        <translation>Geben Sie das Ziel an, dann können Aufträge vorgeschlagen werden.</translation>
    </message>
    <message>
        <source>trying all coats</source>
        <translation>alle Aufträge werden versucht</translation>
    </message>
    <message>
        <source>comparing trays</source>
        <translation>Tabletts werden verglichen</translation>
    </message>
    <message>
        <source>predicting the whole crown</source>
        <translation>die ganze Krone wird vorhergesagt</translation>
    </message>
    <message>
        <source>other ways</source>
        <translation>andere Wege</translation>
    </message>
    <message>
        <source>simulating bench days</source>
        <translation>Arbeitstage werden simuliert</translation>
    </message>
</context>
<context>
    <name>suggest blocks</name>
    <message>
        <source>block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>wanted | bare</source>
        <translation>Ziel | ungefärbt</translation>
    </message>
    <message>
        <source>wanted | best</source>
        <translation>Ziel | bestes</translation>
    </message>
    <message>
        <source>body</source>
        <translation>Körper</translation>
    </message>
    <message>
        <source>furthest</source>
        <translation>fernste</translation>
    </message>
    <message>
        <source>jars</source>
        <translation>Näpfe</translation>
    </message>
    <message>
        <source>coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>Blocks are compared after the coats.</source>
        <translation>Rohlinge werden nach den Aufträgen verglichen.</translation>
    </message>
    <message>
        <source>Blocks side by side</source>
        <translation>Rohlinge nebeneinander</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>Usual choice</source>
        <translation>Übliche Wahl</translation>
    </message>
    <message>
        <source>Computed</source>
        <translation>Errechnet</translation>
    </message>
    <message>
        <source>{block}, bare</source>
        <translation>{block}, ungefärbt</translation>
    </message>
    <message>
        <source>{block}, stained</source>
        <translation>{block}, gefärbt</translation>
    </message>
    <message>
        <source>Take</source>
        <translation>Nehmen</translation>
    </message>
    <message>
        <source>Take {block} with its plan</source>
        <translation>{block} mit seinem Plan nehmen</translation>
    </message>
</context>
<context>
    <name>suggest desk</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>Comparing blocks</source>
        <translation>Rohlinge werden verglichen</translation>
    </message>
    <message>
        <source>Suggesting coats</source>
        <translation>Aufträge werden vorgeschlagen</translation>
    </message>
    <message>
        <source>Stopped.</source>
        <translation>Angehalten.</translation>
    </message>
    <message>
        <source>take {block} with its coats</source>
        <translation>{block} mit seinen Aufträgen nehmen</translation>
    </message>
    <message>
        <source>take suggested coats ({title})</source>
        <translation>vorgeschlagene Aufträge nehmen ({title})</translation>
    </message>
</context>
<context>
    <name>suggest dialog</name>
    <message>
        <source>Suggest coats</source>
        <translation>Aufträge vorschlagen</translation>
    </message>
    <message>
        <source>stop</source>
        <translation>anhalten</translation>
    </message>
    <message>
        <source>Stop the search</source>
        <translation>Suche anhalten</translation>
    </message>
    <message>
        <source>Plans and blocks</source>
        <translation>Pläne und Rohlinge</translation>
    </message>
    <message>
        <source>Suggested plans</source>
        <translation>Vorgeschlagene Pläne</translation>
    </message>
    <message>
        <source>Coats on {block}</source>
        <translation>Aufträge auf {block}</translation>
    </message>
    <message>
        <source>Blocks</source>
        <translation>Rohlinge</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Most jars</source>
        <translation>Höchstens so viele Näpfe</translation>
    </message>
    <message>
        <source>Liquids in stock</source>
        <translation>Vorhandene Flüssigkeiten</translation>
    </message>
    <message>
        <source>Search again</source>
        <translation>Neu suchen</translation>
    </message>
    <message>
        <source>At most</source>
        <translation>Höchstens</translation>
    </message>
    <message>
        <source>jars, of</source>
        <translation>Näpfe, aus</translation>
    </message>
    <message>
        <source>Locked coats stay (L in the table locks a cell).</source>
        <translation>Gesperrte Aufträge bleiben (L in der Tabelle sperrt eine Zelle).</translation>
    </message>
    <message>
        <source>all {count} liquids</source>
        <translation>allen {count} Flüssigkeiten</translation>
    </message>
    <message>
        <source>{count} of {all_} liquids</source>
        <translation>{count} von {all_} Flüssigkeiten</translation>
    </message>
    <message>
        <source>Plans side by side</source>
        <translation>Pläne nebeneinander</translation>
    </message>
    <message>
        <source>jars</source>
        <translation>Näpfe</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>innen</translation>
    </message>
    <message>
        <source>days</source>
        <translation>Tage</translation>
    </message>
    <message>
        <source>why</source>
        <translation>warum</translation>
    </message>
    <message>
        <source>Take this plan</source>
        <translation>Diesen Plan nehmen</translation>
    </message>
    <message>
        <source>Take the plan: {title}</source>
        <translation>Plan nehmen: {title}</translation>
    </message>
    <message>
        <source>see both crowns</source>
        <translation>beide Kronen sehen</translation>
    </message>
    <message>
        <source>See the open plan beside: {title}</source>
        <translation>Den offenen Plan daneben sehen: {title}</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>{label}, wanted and predicted</source>
        <translation>{label}, Ziel und Vorhersage</translation>
    </message>
</context>
<context>
    <name>suggest plan</name>
    <message>
        <source>There is no liquid that coats could be suggested of.</source>
        <translation>Es gibt keine Flüssigkeit, mit der Aufträge vorgeschlagen werden könnten.</translation>
    </message>
    <message>
        <source>Say which liquids are in stock, and what each is for.</source>
        <translation>Sagen Sie, welche Flüssigkeiten vorhanden sind und wofür jede ist.</translation>
    </message>
</context>
<context>
    <name>suggest result</name>
    <message>
        <source>A tray without a jar stains nothing.</source>
        <translation>Ein Tablett ohne Napf färbt nichts.</translation>
    </message>
    <message>
        <source>Allow at least one.</source>
        <translation>Erlauben Sie mindestens einen.</translation>
    </message>
</context>
<context>
    <name>suggest words</name>
    <message>
        <source>Estimated from the suggested plan, up to 0.8 dE00 off; being predicted on the whole crown.</source>
        <translation>Aus dem vorgeschlagenen Plan geschätzt, bis 0.8 dE00 daneben; wird an der ganzen Krone vorhergesagt.</translation>
    </message>
    <message>
        <source>one jar</source>
        <translation>einen Napf</translation>
    </message>
    <message>
        <source>two jars</source>
        <translation>zwei Näpfe</translation>
    </message>
    <message>
        <source>three jars</source>
        <translation>drei Näpfe</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>{jars}, {coats}, {time} of mixing and painting</source>
        <translation>{jars}, {coats}, {time} Mischen und Auftragen</translation>
    </message>
    <message>
        <source>Survives {survived:,} of {days:,} simulated bench days.</source>
        <translation>Übersteht {survived} von {days} simulierten Arbeitstagen.</translation>
    </message>
    <message>
        <source>Survives {survived:,} of {days:,} simulated bench days; on {lost:,} the {area} area strays.</source>
        <translation>Übersteht {survived} von {days} simulierten Arbeitstagen; an {lost} weicht {area} ab.</translation>
    </message>
    <message>
        <source>{liquid} earns its jar: without it the {area} would be about {without:.1f} off instead of {there:.1f}.</source>
        <translation>{liquid} lohnt den Napf: Ohne diese Flüssigkeit läge {area} etwa {without:.1f} neben dem Ziel statt {there:.1f}.</translation>
    </message>
    <message>
        <source>{liquids}: coats saved, the colours are as near without.</source>
        <translation>{liquids}: Aufträge eingespart, die Farben kommen auch ohne sie dem Ziel ebenso nah.</translation>
    </message>
    <message>
        <source>It is the plan of three jars too: it needs {jars}.</source>
        <translation>Er ist auch der Plan mit drei Näpfen: Er braucht {jars}.</translation>
    </message>
    <message>
        <source>No other plan within the limits comes closer.</source>
        <translation>Kein anderer Plan innerhalb der Grenzen kommt näher.</translation>
    </message>
    <message>
        <source>{name}: not reachable: stain only lowers value and adds chroma. Wanted L* {wanted:.1f}, {block} without stain L* {bare:.1f}; the nearest is {nearest:.1f} dE00 away.</source>
        <translation>{name}: nicht erreichbar: Färbung senkt nur die Helligkeit und erhöht die Sättigung. Ziel L* {wanted:.1f}, {block} ohne Färbung L* {bare:.1f}; am nächsten bleibt {nearest:.1f} dE00 Abstand.</translation>
    </message>
    <message>
        <source>{name}: not reachable: stain only lowers value and adds chroma. Wanted C* {wanted:.1f}, {block} without stain C* {bare:.1f}; the nearest is {nearest:.1f} dE00 away.</source>
        <translation>{name}: nicht erreichbar: Färbung senkt nur die Helligkeit und erhöht die Sättigung. Ziel C* {wanted:.1f}, {block} ohne Färbung C* {bare:.1f}; am nächsten bleibt {nearest:.1f} dE00 Abstand.</translation>
    </message>
    <message>
        <source>{name}: no coats within the limits come nearer than {nearest:.1f} dE00 on {block}.</source>
        <translation>{name}: Keine Aufträge innerhalb der Grenzen kommen auf {block} näher als {nearest:.1f} dE00.</translation>
    </message>
    <message>
        <source>Days are simulated, {days:,} that took no part in the choice: one coat more or fewer, hand ±25 %, wall ±0.2 mm, dye too rich, stump a step off. More of them test the sampling, not the bench.</source>
        <translation>Simuliert sind {days} Arbeitstage, die bei der Auswahl nicht mitzählten: ein Auftrag mehr oder weniger, Hand ±25 %, Wand ±0.2 mm, zu viel Farbstoff, Stumpf eine Stufe daneben. Noch mehr Tage würden nur die Stichprobe prüfen, nicht die Arbeit.</translation>
    </message>
    <message>
        <source>Not calibrated: a {verdict}.</source>
        <translation>Nicht kalibriert: {verdict}.</translation>
    </message>
    <message>
        <source>The furthest area is {furthest:.1f} dE00 from what is wanted; it is {worst:.1f} with the plan as it stands.</source>
        <translation>Die fernste Fläche liegt {furthest:.1f} dE00 vom Ziel; mit dem jetzigen Plan sind es {worst:.1f}.</translation>
    </message>
    <message>
        <source>{area} {de00:.1f} nearer</source>
        <translation>{area} {de00:.1f} näher</translation>
    </message>
    <message>
        <source>{area} {de00:.1f} further off</source>
        <translation>{area} {de00:.1f} weiter weg</translation>
    </message>
    <message>
        <source>{effort} than suggested: {what}.</source>
        <translation>{effort} als vorgeschlagen: {what}.</translation>
    </message>
    <message>
        <source>As many jars and coats as suggested: {what}.</source>
        <translation>So viele Näpfe und Aufträge wie vorgeschlagen: {what}.</translation>
    </message>
    <message>
        <source>no area differs by more than a tie</source>
        <translation>keine Fläche kommt merklich näher oder ferner</translation>
    </message>
    <message>
        <source>{jars} more</source>
        <translation>{jars} mehr</translation>
    </message>
    <message>
        <source>{jars} fewer</source>
        <translation>{jars} weniger</translation>
    </message>
    <message>
        <source>{coats} more</source>
        <translation>{coats} mehr</translation>
    </message>
    <message>
        <source>{coats} fewer</source>
        <translation>{coats} weniger</translation>
    </message>
</context>
<context>
    <name>suggested plans</name>
    <message>
        <source>Suggested</source>
        <translation>Vorgeschlagen</translation>
    </message>
    <message>
        <source>suggested</source>
        <translation>vorgeschlagen</translation>
    </message>
    <message>
        <source>Three jars</source>
        <translation>Drei Näpfe</translation>
    </message>
    <message>
        <source>three jars</source>
        <translation>drei Näpfe</translation>
    </message>
    <message>
        <source>Closest there is</source>
        <translation>Am nächsten</translation>
    </message>
    <message>
        <source>closest there is</source>
        <translation>am nächsten</translation>
    </message>
    <message>
        <source>Other liquids</source>
        <translation>Andere Flüssigkeiten</translation>
    </message>
    <message>
        <source>other liquids</source>
        <translation>andere Flüssigkeiten</translation>
    </message>
    <message>
        <source>Nothing inside</source>
        <translation>Innen nichts</translation>
    </message>
    <message>
        <source>nothing inside</source>
        <translation>innen nichts</translation>
    </message>
</context>
<context>
    <name>survey</name>
    <message>
        <source>looking at the body</source>
        <translation>der Körper wird betrachtet</translation>
    </message>
</context>
<context>
    <name>tab table dialog</name>
    <message>
        <source>tab</source>
        <translation>Farbmuster</translation>
    </message>
    <message>
        <source>where from</source>
        <translation>woher</translation>
    </message>
    <message>
        <source>changed on this computer</source>
        <translation>an diesem Rechner geändert</translation>
    </message>
    <message>
        <source>L*a*b* under illuminant C, 2°, integrating sphere. These values were written down from memory of a published table and are not verified; correct any of them. Cases keep the values they were planned with.</source>
        <translation>L*a*b* unter Normlichtart C, 2°, Ulbrichtkugel. Diese Werte wurden aus dem Gedächtnis nach einer veröffentlichten Tabelle notiert und sind nicht überprüft; berichtigen Sie sie. Fälle behalten die Werte, mit denen sie geplant wurden.</translation>
    </message>
    <message>
        <source>Table of tabs</source>
        <translation>Tabelle der Farbmuster</translation>
    </message>
    <message>
        <source>the shipped values again</source>
        <translation>wieder die mitgelieferten Werte</translation>
    </message>
    <message>
        <source>&apos;{text}&apos; is not a number.</source>
        <translation>„{text}“ ist keine Zahl.</translation>
    </message>
    <message>
        <source>Write it as 74.36.</source>
        <translation>Schreiben Sie sie als 74.36.</translation>
    </message>
</context>
<context>
    <name>table file</name>
    <message>
        <source>The file is too large for a table of {kind}.</source>
        <translation>Die Datei ist zu groß für eine Tabelle ({kind}).</translation>
    </message>
    <message>
        <source>The table of {kind} cannot be read ({value}).</source>
        <translation>Die Tabelle ({kind}) kann nicht gelesen werden ({value}).</translation>
    </message>
    <message>
        <source>The file is not valid TOML: {error}.</source>
        <translation>Die Datei ist kein gültiges TOML: {error}.</translation>
    </message>
</context>
<context>
    <name>targets</name>
    <message>
        <source>{axis} {value:.1f} is outside what tooth-coloured ceramic can look like ({low:g} to {high:g}). Check that L*, a*, b* stand in their places; no plan will reach it.</source>
        <translation>{axis} {value:.1f} liegt außerhalb dessen, wie zahnfarbene Keramik aussehen kann ({low:g} bis {high:g}). Prüfen Sie, ob L*, a*, b* an ihrem Platz stehen; kein Plan wird es erreichen.</translation>
    </message>
</context>
<context>
    <name>teeth</name>
    <message>
        <source>central incisor</source>
        <translation>mittlerer Schneidezahn</translation>
    </message>
    <message>
        <source>lateral incisor</source>
        <translation>seitlicher Schneidezahn</translation>
    </message>
    <message>
        <source>canine</source>
        <translation>Eckzahn</translation>
    </message>
    <message>
        <source>first premolar</source>
        <translation>erster Prämolar</translation>
    </message>
    <message>
        <source>second premolar</source>
        <translation>zweiter Prämolar</translation>
    </message>
    <message>
        <source>first molar</source>
        <translation>erster Molar</translation>
    </message>
    <message>
        <source>second molar</source>
        <translation>zweiter Molar</translation>
    </message>
    <message>
        <source>third molar</source>
        <translation>dritter Molar</translation>
    </message>
    <message>
        <source>upper right</source>
        <translation>oben rechts</translation>
    </message>
    <message>
        <source>upper left</source>
        <translation>oben links</translation>
    </message>
    <message>
        <source>lower left</source>
        <translation>unten links</translation>
    </message>
    <message>
        <source>lower right</source>
        <translation>unten rechts</translation>
    </message>
    <message>
        <source>{quadrant} {tooth}</source>
        <translation>{tooth} {quadrant}</translation>
    </message>
</context>
<context>
    <name>teeth dialog</name>
    <message>
        <source>Tooth and roles</source>
        <translation>Zahn und Rollen</translation>
    </message>
    <message>
        <source>Numbers by ISO 3950, in the order of the units.
The crown is read again; corrections of zones made by hand are kept.</source>
        <translation>Nummern nach ISO 3950, in der Reihenfolge der Einheiten.
Die Krone wird neu gelesen; von Hand berichtigte Zonen bleiben.</translation>
    </message>
    <message>
        <source>Tooth numbers, ISO 3950</source>
        <translation>Zahnnummern nach ISO 3950</translation>
    </message>
    <message>
        <source>Read again</source>
        <translation>Neu lesen</translation>
    </message>
    <message>
        <source>Role of {number}</source>
        <translation>Rolle von {number}</translation>
    </message>
</context>
<context>
    <name>time</name>
    <message>
        <source>Mon</source>
        <translation>Mo</translation>
    </message>
    <message>
        <source>Tue</source>
        <translation>Di</translation>
    </message>
    <message>
        <source>Wed</source>
        <translation>Mi</translation>
    </message>
    <message>
        <source>Thu</source>
        <translation>Do</translation>
    </message>
    <message>
        <source>Fri</source>
        <translation>Fr</translation>
    </message>
    <message>
        <source>Sat</source>
        <translation>Sa</translation>
    </message>
    <message>
        <source>Sun</source>
        <translation>So</translation>
    </message>
    <message>
        <source>Jan</source>
        <translation>Jan.</translation>
    </message>
    <message>
        <source>Feb</source>
        <translation>Feb.</translation>
    </message>
    <message>
        <source>Mar</source>
        <translation>März</translation>
    </message>
    <message>
        <source>Apr</source>
        <translation>Apr.</translation>
    </message>
    <message>
        <source>May</source>
        <translation>Mai</translation>
    </message>
    <message>
        <source>Jun</source>
        <translation>Juni</translation>
    </message>
    <message>
        <source>Jul</source>
        <translation>Juli</translation>
    </message>
    <message>
        <source>Aug</source>
        <translation>Aug.</translation>
    </message>
    <message>
        <source>Sep</source>
        <translation>Sept.</translation>
    </message>
    <message>
        <source>Oct</source>
        <translation>Okt.</translation>
    </message>
    <message>
        <source>Nov</source>
        <translation>Nov.</translation>
    </message>
    <message>
        <source>Dec</source>
        <translation>Dez.</translation>
    </message>
    <message>
        <source>{day} {month} {clock}</source>
        <translation>{day}. {month} {clock}</translation>
    </message>
</context>
<context>
    <name>tooth</name>
    <message>
        <source>{number} is not a tooth number.</source>
        <translation>{number} ist keine Zahnnummer.</translation>
    </message>
    <message>
        <source>Give two digits by ISO 3950: quadrant 1 to 4, position 1 to 8, as in 46.</source>
        <translation>Geben Sie zwei Ziffern nach ISO 3950 an: Quadrant 1 bis 4, Stelle 1 bis 8, etwa 46.</translation>
    </message>
</context>
<context>
    <name>top bar</name>
    <message>
        <source>More menus</source>
        <translation>Weitere Menüs</translation>
    </message>
</context>
<context>
    <name>tray</name>
    <message>
        <source>reading {name}</source>
        <translation>{name} wird gelesen</translation>
    </message>
    <message>
        <source>{named} It stays on the tray, unmixed.</source>
        <translation>{named} Er bleibt auf dem Tablett, ungemischt.</translation>
    </message>
    <message>
        <source>{code} was planned anew since it was laid on the tray; the new plan counts.</source>
        <translation>{code} wurde neu geplant, seit er auf das Tablett gelegt wurde; der neue Plan gilt.</translation>
    </message>
    <message>
        <source>{name} is a copy of {name_2}, both {code}; it stays on the tray, unmixed.</source>
        <translation>{name} ist eine Kopie von {name_2}, beide {code}; sie bleibt auf dem Tablett, ungemischt.</translation>
    </message>
    <message>
        <source>{files} have the code {code}; lists and sheets tell them apart by their files.</source>
        <translation>{files} haben den Code {code}; Listen und Blätter unterscheiden sie nach ihren Dateien.</translation>
    </message>
    <message>
        <source>{name} lies on the tray twice.</source>
        <translation>{name} liegt zweimal auf dem Tablett.</translation>
    </message>
    <message>
        <source>Lay each case once.</source>
        <translation>Legen Sie jeden Fall einmal darauf.</translation>
    </message>
    <message>
        <source>{count} cases are too many for one tray.</source>
        <translation>{count} Fälle sind zu viele für ein Tablett.</translation>
    </message>
    <message>
        <source>Lay at most {most_cases}.</source>
        <translation>Legen Sie höchstens {most_cases} darauf.</translation>
    </message>
</context>
<context>
    <name>tray bench</name>
    <message>
        <source>open elsewhere ({holder})</source>
        <translation>anderswo offen ({holder})</translation>
    </message>
    <message>
        <source>open elsewhere</source>
        <translation>anderswo offen</translation>
    </message>
    <message>
        <source>{name} is {where}.</source>
        <translation>{name} ist {where}.</translation>
    </message>
    <message>
        <source>Close it there first.</source>
        <translation>Schließen Sie ihn dort zuerst.</translation>
    </message>
</context>
<context>
    <name>tray desk</name>
    <message>
        <source>Writing into the files of the cases…</source>
        <translation>Wird in die Dateien der Fälle geschrieben…</translation>
    </message>
    <message>
        <source>Reading the tray</source>
        <translation>Tablett wird gelesen</translation>
    </message>
    <message>
        <source>Measuring walls</source>
        <translation>Wände werden gemessen</translation>
    </message>
    <message>
        <source>nothing done</source>
        <translation>nichts erledigt</translation>
    </message>
    <message>
        <source>Marked as {what}: {count}.</source>
        <translation>Vermerkt als {what}: {count}.</translation>
    </message>
    <message>
        <source>state on the bench</source>
        <translation>Stand der Arbeit</translation>
    </message>
    <message>
        <source>Marking the state</source>
        <translation>Stand wird vermerkt</translation>
    </message>
    <message>
        <source>take off {cases}</source>
        <translation>{cases} herunternehmen</translation>
    </message>
    <message>
        <source>Add cases</source>
        <translation>Fälle hinzufügen</translation>
    </message>
    <message>
        <source>Cases (*{ending})</source>
        <translation>Fälle (*{ending})</translation>
    </message>
    <message>
        <source>add cases</source>
        <translation>Fälle hinzufügen</translation>
    </message>
    <message>
        <source>Open a tray</source>
        <translation>Tablett öffnen</translation>
    </message>
    <message>
        <source>Trays (*{ending})</source>
        <translation>Tabletts (*{ending})</translation>
    </message>
    <message>
        <source>open a tray</source>
        <translation>ein Tablett öffnen</translation>
    </message>
    <message>
        <source>Keep the tray</source>
        <translation>Tablett aufbewahren</translation>
    </message>
    <message>
        <source>Kept as {path}.</source>
        <translation>Aufbewahrt als {path}.</translation>
    </message>
    <message>
        <source>one case</source>
        <translation>ein Fall</translation>
    </message>
    <message>
        <source>{count} cases</source>
        <translation>{count} Fälle</translation>
    </message>
</context>
<context>
    <name>tray dialog</name>
    <message>
        <source>Reading the cases…</source>
        <translation>Fälle werden gelesen…</translation>
    </message>
    <message>
        <source>Nothing lies on the tray. Add cases, or open a tray that was kept.</source>
        <translation>Auf dem Tablett liegt nichts. Fügen Sie Fälle hinzu, oder öffnen Sie ein aufbewahrtes Tablett.</translation>
    </message>
    <message>
        <source>Tray</source>
        <translation>Tablett</translation>
    </message>
    <message>
        <source>Cases that are mixed for, painted and fired together. Jars of the same liquid and dye are put together; mixed jars are kept {hours:g} h at most.</source>
        <translation>Fälle, für die gemeinsam gemischt, aufgetragen und gesintert wird. Näpfe gleicher Flüssigkeit und gleichen Farbstoffs werden zusammengelegt; gemischte Näpfe werden höchstens {hours:g} h aufbewahrt.</translation>
    </message>
    <message>
        <source>Jars mixed for the tray</source>
        <translation>Für das Tablett gemischte Näpfe</translation>
    </message>
    <message>
        <source>Remarks on the tray</source>
        <translation>Bemerkungen zum Tablett</translation>
    </message>
    <message>
        <source>Open in the window</source>
        <translation>Im Fenster öffnen</translation>
    </message>
    <message>
        <source>Set the state...</source>
        <translation>Stand setzen...</translation>
    </message>
    <message>
        <source>Take off</source>
        <translation>Herunternehmen</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Add cases...</source>
        <translation>Fälle hinzufügen...</translation>
    </message>
    <message>
        <source>Open a tray...</source>
        <translation>Tablett öffnen...</translation>
    </message>
    <message>
        <source>Keep this tray...</source>
        <translation>Dieses Tablett aufbewahren...</translation>
    </message>
    <message>
        <source>Sheets...</source>
        <translation>Blätter...</translation>
    </message>
    <message>
        <source>Coat maps, agreement pages and one mixing list: look at them, print or save them ({shortcut})</source>
        <translation>Auftragspläne, Einverständnisseiten und eine Mischliste: ansehen, drucken oder speichern ({shortcut})</translation>
    </message>
    <message>
        <source>{name} ({codes}) ready {ready}</source>
        <translation>{name} ({codes}) fertig {ready}</translation>
    </message>
    <message>
        <source>1 unit</source>
        <translation>1 Einheit</translation>
    </message>
    <message>
        <source>{units} units</source>
        <translation>{units} Einheiten</translation>
    </message>
    <message>
        <source>{units}. {stages}. If started now: {ready}.</source>
        <translation>{units}. {stages}. Bei Beginn jetzt: {ready}.</translation>
    </message>
    <message>
        <source>Nothing to look out for.</source>
        <translation>Nichts zu beachten.</translation>
    </message>
    <message>
        <source>Undo: {step}</source>
        <translation>Rückgängig: {step}</translation>
    </message>
    <message>
        <source>Nothing to undo on the tray</source>
        <translation>Auf dem Tablett ist nichts rückgängig zu machen</translation>
    </message>
    <message>
        <source>{unread} left out</source>
        <translation>{unread} ausgelassen</translation>
    </message>
    <message>
        <source>1 case: {told}.</source>
        <translation>1 Fall: {told}.</translation>
    </message>
    <message>
        <source>{count} cases: {told}.</source>
        <translation>{count} Fälle: {told}.</translation>
    </message>
</context>
<context>
    <name>tray file</name>
    <message>
        <source>The file cannot be read.</source>
        <translation>Die Datei kann nicht gelesen werden.</translation>
    </message>
    <message>
        <source>Look whether it is still there.</source>
        <translation>Sehen Sie nach, ob sie noch da ist.</translation>
    </message>
    <message>
        <source>This is no tray.</source>
        <translation>Das ist kein Tablett.</translation>
    </message>
    <message>
        <source>Trays end in {suffix}.</source>
        <translation>Tabletts enden auf {suffix}.</translation>
    </message>
    <message>
        <source>A newer version wrote it (version {version}; this one reads up to {version_2}).</source>
        <translation>Eine neuere Version hat es geschrieben (Version {version}; diese liest bis {version_2}).</translation>
    </message>
    <message>
        <source>Open it with that version.</source>
        <translation>Öffnen Sie es mit jener Version.</translation>
    </message>
    <message>
        <source>{name!r} is no name of a file.</source>
        <translation>{name!r} ist kein Dateiname.</translation>
    </message>
    <message>
        <source>Lay the tray anew.</source>
        <translation>Legen Sie das Tablett neu.</translation>
    </message>
</context>
<context>
    <name>tray mixing</name>
    <message>
        <source>Jar {number}, {liquid}: nothing is painted with it; leave it out.</source>
        <translation>Napf {number}, {liquid}: Nichts wird damit gefärbt; lassen Sie ihn weg.</translation>
    </message>
    <message>
        <source>Jar {number}, {liquid}: {batches} batches of {drops} drops, one would run dry.</source>
        <translation>Napf {number}, {liquid}: {batches} Ansätze von {drops} Tropfen, einer allein würde nicht reichen.</translation>
    </message>
    <message>
        <source>{number} in {code}</source>
        <translation>{number} in {code}</translation>
    </message>
    <message>
        <source>Jar {number} of the tray is jar {others}.</source>
        <translation>Napf {number} des Tabletts ist Napf {others}.</translation>
    </message>
    <message>
        <source>Jar {number}, {liquid}: the cases name the lots {lots}; take one of them and note it in all.</source>
        <translation>Napf {number}, {liquid}: Die Fälle nennen die Chargen {lots}; nehmen Sie eine davon und vermerken Sie sie in allen.</translation>
    </message>
    <message>
        <source>{name} is mixed in more than one way: jars {jars}. With one recipe in all cases one jar would do.</source>
        <translation>{name} wird auf mehr als eine Art gemischt: Näpfe {jars}. Mit einem Rezept in allen Fällen genügte ein Napf.</translation>
    </message>
    <message>
        <source>{drops} drops</source>
        <translation>{drops} Tropfen</translation>
    </message>
    <message>
        <source>no dye</source>
        <translation>kein Farbstoff</translation>
    </message>
</context>
<context>
    <name>tray run</name>
    <message>
        <source>This tray needs {count} firings, one after the other. {firings}.</source>
        <translation>Dieses Tablett braucht {count} Sinterbrände, einen nach dem anderen. {firings}.</translation>
    </message>
    <message>
        <source>Two programmes are called “{name}” and differ; see the cases&apos; materials.</source>
        <translation>Zwei Programme heißen „{name}“ und unterscheiden sich; siehe die Materialien der Fälle.</translation>
    </message>
    <message>
        <source>{units} units in one firing; a tray usually holds {usual} at most (assumed). Fire them in parts.</source>
        <translation>{units} Einheiten in einem Sinterbrand; ein Tablett fasst meist höchstens {usual} (angenommen). Sintern Sie in Teilen.</translation>
    </message>
    <message>
        <source>Painting takes {painting}, longer than a mixed jar is kept ({hours:g} h): mix in parts.</source>
        <translation>Das Auftragen dauert {painting}, länger als ein gemischter Napf aufbewahrt wird ({hours:g} h): Mischen Sie in Teilen.</translation>
    </message>
</context>
<context>
    <name>tray sheets</name>
    <message>
        <source>{code}: {drawn} There are no sheets of it.</source>
        <translation>{code}: {drawn} Es gibt keine Blätter davon.</translation>
    </message>
    <message>
        <source>Nothing lies on the tray.</source>
        <translation>Auf dem Tablett liegt nichts.</translation>
    </message>
    <message>
        <source>Lay a planned case on it.</source>
        <translation>Legen Sie einen geplanten Fall darauf.</translation>
    </message>
    <message>
        <source>There is no mixing list: {error}</source>
        <translation>Es gibt keine Mischliste: {error}</translation>
    </message>
    <message>
        <source>prediction</source>
        <translation>Vorhersage</translation>
    </message>
    <message>
        <source>The plan has no step to paint.</source>
        <translation>Der Plan hat keinen Schritt aufzutragen.</translation>
    </message>
    <message>
        <source>Add a step first.</source>
        <translation>Fügen Sie zuerst einen Schritt hinzu.</translation>
    </message>
</context>
<context>
    <name>tray units</name>
    <message>
        <source>state</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>case</source>
        <translation>Fall</translation>
    </message>
    <message>
        <source>units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>programme</source>
        <translation>Programm</translation>
    </message>
    <message>
        <source>sheet</source>
        <translation>Blatt</translation>
    </message>
    <message>
        <source>file</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>{name} (open)</source>
        <translation>{name} (offen)</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>{state}; changed since</source>
        <translation>{state}; seither geändert</translation>
    </message>
    <message>
        <source>This case is left out; the remarks below say why. It stays on the tray.</source>
        <translation>Dieser Fall ist ausgelassen; die Bemerkungen unten sagen, warum. Er bleibt auf dem Tablett.</translation>
    </message>
    <message>
        <source>The plan was changed after this state was marked.</source>
        <translation>Der Plan wurde geändert, nachdem dieser Stand vermerkt wurde.</translation>
    </message>
    <message>
        <source>The plan is newer than revision {revision}, which was printed last: print the sheets again.</source>
        <translation>Der Plan ist neuer als Revision {revision}, die zuletzt gedruckt wurde: Drucken Sie die Blätter neu.</translation>
    </message>
    <message>
        <source>Cases on the tray</source>
        <translation>Fälle auf dem Tablett</translation>
    </message>
</context>
<context>
    <name>unit panel</name>
    <message>
        <source>Tooth number, ISO 3950</source>
        <translation>Zahnnummer, ISO 3950</translation>
    </message>
    <message>
        <source>Tooth number by ISO 3950</source>
        <translation>Zahnnummer nach ISO 3950</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>Size of the mesh</source>
        <translation>Größe des Netzes</translation>
    </message>
    <message>
        <source>What lies behind</source>
        <translation>Was dahinter liegt</translation>
    </message>
    <message>
        <source>Cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>Sintering programme</source>
        <translation>Sinterprogramm</translation>
    </message>
    <message>
        <source>Mesh</source>
        <translation>Netz</translation>
    </message>
    <message>
        <source>Behind it</source>
        <translation>Dahinter</translation>
    </message>
    <message>
        <source>Furnace</source>
        <translation>Ofen</translation>
    </message>
    <message>
        <source>intake</source>
        <translation>Fallaufnahme</translation>
    </message>
    <message>
        <source>1 note</source>
        <translation>1 Bemerkung</translation>
    </message>
    <message>
        <source>{count} notes</source>
        <translation>{count} Bemerkungen</translation>
    </message>
    <message>
        <source>draft: intake</source>
        <translation>Entwurf: Fallaufnahme</translation>
    </message>
    <message>
        <source>Shade, stump, neighbours and wish, on one page</source>
        <translation>Farbe, Stumpf, Nachbarn und Wunsch auf einer Seite</translation>
    </message>
    <message>
        <source>Intake page</source>
        <translation>Fallaufnahme</translation>
    </message>
    <message>
        <source>no crown yet</source>
        <translation>noch keine Krone</translation>
    </message>
    <message>
        <source>bridge of {count} units</source>
        <translation>Brücke aus {count} Einheiten</translation>
    </message>
</context>
<context>
    <name>unit state</name>
    <message>
        <source>revision {revision}</source>
        <translation>Revision {revision}</translation>
    </message>
    <message>
        <source>newer than revision {revision}</source>
        <translation>neuer als Revision {revision}</translation>
    </message>
    <message>
        <source>No zones have been proposed yet.</source>
        <translation>Noch sind keine Zonen vorgeschlagen.</translation>
    </message>
    <message>
        <source>Nothing is painted in this plan yet.</source>
        <translation>In diesem Plan ist noch nichts gefärbt.</translation>
    </message>
</context>
<context>
    <name>unit values panel</name>
    <message>
        <source>unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>wall mm</source>
        <translation>Wand mm</translation>
    </message>
    <message>
        <source>Mean of each unit&apos;s body; dL* from the unit above it.</source>
        <translation>Mittel über den Körper jeder Einheit; dL* zur Einheit darüber.</translation>
    </message>
    <message>
        <source>Value per unit</source>
        <translation>Helligkeit je Einheit</translation>
    </message>
    <message>
        <source>{number}: L* {lightness}, plus or minus {plus_minus}, wall {wall} mm</source>
        <translation>{number}: L* {lightness}, plus oder minus {plus_minus}, Wand {wall} mm</translation>
    </message>
    <message>
        <source>{unit}, {step} from the unit before it</source>
        <translation>{unit}, {step} zur Einheit davor</translation>
    </message>
    <message>
        <source>largest step {size:.1f} L*, {before} to {after}</source>
        <translation>größter Unterschied {size:.1f} L*, {before} zu {after}</translation>
    </message>
    <message>
        <source>Value of each unit</source>
        <translation>Helligkeit jeder Einheit</translation>
    </message>
    <message>
        <source>value of each unit</source>
        <translation>Helligkeit jeder Einheit</translation>
    </message>
</context>
<context>
    <name>units of bridge</name>
    <message>
        <source>looking for connectors</source>
        <translation>Verbinder werden gesucht</translation>
    </message>
</context>
<context>
    <name>upgrading</name>
    <message>
        <source>The lab book cannot be brought to the new version: entries in it refer to others that are missing.</source>
        <translation>Das Laborbuch kann nicht auf die neue Version gebracht werden: Einträge darin beziehen sich auf andere, die fehlen.</translation>
    </message>
    <message>
        <source>Go on with the version of the program it was written by, and report this.</source>
        <translation>Arbeiten Sie mit der Version weiter, die es geschrieben hat, und melden Sie das.</translation>
    </message>
</context>
<context>
    <name>value ladder</name>
    <message>
        <source>Value ladder</source>
        <translation>Helligkeitsleiter</translation>
    </message>
    <message>
        <source>{area}, wanted {lightness:.1f}</source>
        <translation>{area}, Ziel {lightness:.1f}</translation>
    </message>
    <message>
        <source>beside it {tooth} L* {lightness:.1f}</source>
        <translation>daneben {tooth} L* {lightness:.1f}</translation>
    </message>
    <message>
        <source>beside</source>
        <translation>daneben</translation>
    </message>
    <message>
        <source>wanted</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <source>predicted</source>
        <translation>Vorhersage</translation>
    </message>
</context>
<context>
    <name>values</name>
    <message>
        <source>crown</source>
        <translation>Krone</translation>
    </message>
    <message>
        <source>bridge</source>
        <translation>Brücke</translation>
    </message>
    <message>
        <source>solid crown</source>
        <translation>massive Krone</translation>
    </message>
    <message>
        <source>open sheet</source>
        <translation>offene Fläche</translation>
    </message>
    <message>
        <source>rooted tooth</source>
        <translation>Zahn mit Wurzel</translation>
    </message>
    <message>
        <source>jaw</source>
        <translation>Kiefer</translation>
    </message>
    <message>
        <source>several bodies</source>
        <translation>mehrere Körper</translation>
    </message>
    <message>
        <source>not a crown</source>
        <translation>keine Krone</translation>
    </message>
    <message>
        <source>retainer</source>
        <translation>Pfeiler</translation>
    </message>
    <message>
        <source>pontic</source>
        <translation>Brückenglied</translation>
    </message>
    <message>
        <source>stump</source>
        <translation>Stumpf</translation>
    </message>
    <message>
        <source>incisal edge</source>
        <translation>Schneidekante</translation>
    </message>
    <message>
        <source>screw channel</source>
        <translation>Schraubenkanal</translation>
    </message>
    <message>
        <source>open air</source>
        <translation>Luft</translation>
    </message>
    <message>
        <source>mesial</source>
        <translation>mesial</translation>
    </message>
    <message>
        <source>distal</source>
        <translation>distal</translation>
    </message>
    <message>
        <source>buccal</source>
        <translation>bukkal</translation>
    </message>
    <message>
        <source>lingual</source>
        <translation>lingual</translation>
    </message>
    <message>
        <source>labial</source>
        <translation>labial</translation>
    </message>
    <message>
        <source>palatal</source>
        <translation>palatinal</translation>
    </message>
    <message>
        <source>occlusal</source>
        <translation>okklusal</translation>
    </message>
    <message>
        <source>incisal</source>
        <translation>inzisal</translation>
    </message>
    <message>
        <source>cervical</source>
        <translation>zervikal</translation>
    </message>
    <message>
        <source>inner surface</source>
        <translation>Innenfläche</translation>
    </message>
    <message>
        <source>mixed</source>
        <translation>gemischt</translation>
    </message>
    <message>
        <source>painted</source>
        <translation>aufgetragen</translation>
    </message>
    <message>
        <source>dried</source>
        <translation>getrocknet</translation>
    </message>
    <message>
        <source>sintered</source>
        <translation>gesintert</translation>
    </message>
    <message>
        <source>judged</source>
        <translation>beurteilt</translation>
    </message>
    <message>
        <source>draft</source>
        <translation>Entwurf</translation>
    </message>
    <message>
        <source>planned</source>
        <translation>geplant</translation>
    </message>
    <message>
        <source>no sheet</source>
        <translation>kein Blatt</translation>
    </message>
    <message>
        <source>sheet as planned</source>
        <translation>Blatt wie geplant</translation>
    </message>
    <message>
        <source>plan newer than the sheet</source>
        <translation>Plan neuer als das Blatt</translation>
    </message>
    <message>
        <source>mix</source>
        <translation>Mischen</translation>
    </message>
    <message>
        <source>coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>dry</source>
        <translation>Trocknen</translation>
    </message>
    <message>
        <source>sinter</source>
        <translation>Sintern</translation>
    </message>
    <message>
        <source>cool</source>
        <translation>Abkühlen</translation>
    </message>
    <message>
        <source>middle</source>
        <translation>mittel</translation>
    </message>
    <message>
        <source>milled</source>
        <translation>gefräst</translation>
    </message>
    <message>
        <source>as sintered</source>
        <translation>wie gesintert</translation>
    </message>
    <message>
        <source>polished</source>
        <translation>poliert</translation>
    </message>
    <message>
        <source>glazed</source>
        <translation>glasiert</translation>
    </message>
    <message>
        <source>slow</source>
        <translation>langsam</translation>
    </message>
    <message>
        <source>standard</source>
        <translation>Standard</translation>
    </message>
    <message>
        <source>fast</source>
        <translation>schnell</translation>
    </message>
    <message>
        <source>very fast</source>
        <translation>sehr schnell</translation>
    </message>
    <message>
        <source>reddish-brown</source>
        <translation>rötlich-braun</translation>
    </message>
    <message>
        <source>reddish-yellow</source>
        <translation>rötlich-gelb</translation>
    </message>
    <message>
        <source>grey</source>
        <translation>grau</translation>
    </message>
    <message>
        <source>reddish-grey</source>
        <translation>rötlich-grau</translation>
    </message>
    <message>
        <source>unnamed</source>
        <translation>ungenannt</translation>
    </message>
    <message>
        <source>d/8, tab table</source>
        <translation>d/8, Mustertabelle</translation>
    </message>
    <message>
        <source>photograph</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>in place</source>
        <translation>im Mund</translation>
    </message>
    <message>
        <source>first-surface reflection, polished, n 2.15</source>
        <translation>Reflexion der ersten Oberfläche, poliert, n 2.15</translation>
    </message>
    <message>
        <source>linear Bradford adaptation</source>
        <translation>lineare Bradford-Anpassung</translation>
    </message>
    <message>
        <source>tab table, illuminant C to D65, geometry unchanged, ±1.5</source>
        <translation>Mustertabelle, Normlichtart C zu D65, Geometrie unverändert, ±1.5</translation>
    </message>
    <message>
        <source>photograph taken for 45/0, D65</source>
        <translation>Foto, behandelt wie 45/0, D65</translation>
    </message>
    <message>
        <source>invented</source>
        <translation>erfunden</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>calibrated</source>
        <translation>kalibriert</translation>
    </message>
    <message>
        <source>published</source>
        <translation>veröffentlicht</translation>
    </message>
    <message>
        <source>from memory</source>
        <translation>aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>common practice</source>
        <translation>übliche Praxis</translation>
    </message>
    <message>
        <source>common practice, no published source</source>
        <translation>übliche Praxis, keine veröffentlichte Quelle</translation>
    </message>
    <message>
        <source>assumed</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>settle first</source>
        <translation>zuerst klären</translation>
    </message>
    <message>
        <source>check</source>
        <translation>prüfen</translation>
    </message>
    <message>
        <source>note</source>
        <translation>Hinweis</translation>
    </message>
    <message>
        <source>not seen by most</source>
        <translation>von den meisten nicht gesehen</translation>
    </message>
    <message>
        <source>seen, usually accepted</source>
        <translation>gesehen, meist akzeptiert</translation>
    </message>
    <message>
        <source>usually rejected</source>
        <translation>meist abgelehnt</translation>
    </message>
    <message>
        <source>direction, not a match</source>
        <translation>nur eine Richtung</translation>
    </message>
    <message>
        <source>block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>liquid</source>
        <translation>Flüssigkeit</translation>
    </message>
    <message>
        <source>ion</source>
        <translation>Ion</translation>
    </message>
    <message>
        <source>dye</source>
        <translation>Farbstoff</translation>
    </message>
    <message>
        <source>programme</source>
        <translation>Programm</translation>
    </message>
    <message>
        <source>cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>reflectance</source>
        <translation>Reflexion</translation>
    </message>
    <message>
        <source>transmittance</source>
        <translation>Transmission</translation>
    </message>
    <message>
        <source>absorption in 1/mm</source>
        <translation>Absorption in 1/mm</translation>
    </message>
    <message>
        <source>scattering in 1/mm</source>
        <translation>Streuung in 1/mm</translation>
    </message>
    <message>
        <source>absorption</source>
        <translation>Absorption</translation>
    </message>
    <message>
        <source>scattering</source>
        <translation>Streuung</translation>
    </message>
    <message>
        <source>bench</source>
        <translation>am Tisch</translation>
    </message>
    <message>
        <source>zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>value</source>
        <translation>Helligkeit</translation>
    </message>
    <message>
        <source>offset</source>
        <translation>Abstand</translation>
    </message>
    <message>
        <source>thickness</source>
        <translation>Wandstärke</translation>
    </message>
    <message>
        <source>in the row</source>
        <translation>in der Reihe</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>beschliffen</translation>
    </message>
    <message>
        <source>all</source>
        <translation>alle</translation>
    </message>
    <message>
        <source>rosette</source>
        <translation>Rosette</translation>
    </message>
    <message>
        <source>system</source>
        <translation>System</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>buccal to lingual</source>
        <translation>bukkal nach lingual</translation>
    </message>
    <message>
        <source>mesial to distal</source>
        <translation>mesial nach distal</translation>
    </message>
    <message>
        <source>level</source>
        <translation>waagerecht</translation>
    </message>
    <message>
        <source>pink</source>
        <translation>rosa</translation>
    </message>
    <message>
        <source>red</source>
        <translation>rot</translation>
    </message>
    <message>
        <source>orange</source>
        <translation>orange</translation>
    </message>
    <message>
        <source>yellow</source>
        <translation>gelb</translation>
    </message>
    <message>
        <source>green</source>
        <translation>grün</translation>
    </message>
    <message>
        <source>blue</source>
        <translation>blau</translation>
    </message>
    <message>
        <source>violet</source>
        <translation>violett</translation>
    </message>
    <message>
        <source>a coat too many</source>
        <translation>ein Auftrag zu viel</translation>
    </message>
    <message>
        <source>a coat too few</source>
        <translation>ein Auftrag zu wenig</translation>
    </message>
    <message>
        <source>brushed half a millimetre too far</source>
        <translation>einen halben Millimeter zu weit gepinselt</translation>
    </message>
    <message>
        <source>twice the dye in the jar</source>
        <translation>doppelt so viel Farbstoff im Napf</translation>
    </message>
    <message>
        <source>no dye in the jar</source>
        <translation>kein Farbstoff im Napf</translation>
    </message>
    <message>
        <source>fired in the fastest programme</source>
        <translation>im schnellsten Programm gesintert</translation>
    </message>
    <message>
        <source>finding areas</source>
        <translation>Flächen finden</translation>
    </message>
    <message>
        <source>reaching a shade</source>
        <translation>eine Farbe erreichen</translation>
    </message>
    <message>
        <source>choosing the block</source>
        <translation>den Rohling wählen</translation>
    </message>
    <message>
        <source>leading value</source>
        <translation>Helligkeit steuern</translation>
    </message>
    <message>
        <source>few coats and jars</source>
        <translation>wenige Aufträge und Näpfe</translation>
    </message>
    <message>
        <source>order at the bench</source>
        <translation>Reihenfolge am Platz</translation>
    </message>
    <message>
        <source>leaving nothing bare</source>
        <translation>nichts ungefärbt lassen</translation>
    </message>
    <message>
        <source>mixing jars</source>
        <translation>Näpfe mischen</translation>
    </message>
    <message>
        <source>finding faults</source>
        <translation>Fehler finden</translation>
    </message>
    <message>
        <source>seeing value</source>
        <translation>Helligkeit sehen</translation>
    </message>
    <message>
        <source>Animated GIF, 256 colours</source>
        <translation>Animiertes GIF, 256 Farben</translation>
    </message>
    <message>
        <source>Animated PNG</source>
        <translation>Animiertes PNG</translation>
    </message>
    <message>
        <source>Series of PNG pictures, numbered</source>
        <translation>Reihe von PNG-Bildern, nummeriert</translation>
    </message>
</context>
<context>
    <name>wanted dialog</name>
    <message>
        <source>What is wanted</source>
        <translation>Was gewünscht ist</translation>
    </message>
    <message>
        <source>The body as seen in place; the other areas follow it.</source>
        <translation>Der Körper, wie im Mund gesehen; die anderen Flächen folgen ihm.</translation>
    </message>
    <message>
        <source>Name of the shade</source>
        <translation>Name der Farbe</translation>
    </message>
    <message>
        <source>name, for instance a shade designation</source>
        <translation>Name, etwa eine Farbbezeichnung</translation>
    </message>
    <message>
        <source>Shade</source>
        <translation>Farbe</translation>
    </message>
    <message>
        <source>body</source>
        <translation>Körper</translation>
    </message>
    <message>
        <source>body {axis}</source>
        <translation>Körper {axis}</translation>
    </message>
    <message>
        <source>The body&apos;s colour on this screen</source>
        <translation>Die Farbe des Körpers auf diesem Bildschirm</translation>
    </message>
    <message>
        <source>from the body</source>
        <translation>zum Körper</translation>
    </message>
    <message>
        <source>{name} lightness from body</source>
        <translation>{name}, Helligkeit zum Körper</translation>
    </message>
    <message>
        <source>{name} chroma from body</source>
        <translation>{name}, Sättigung zum Körper</translation>
    </message>
    <message>
        <source>own shade {lab}</source>
        <translation>eigene Farbe {lab}</translation>
    </message>
    <message>
        <source>{name}: keep to its own shade</source>
        <translation>{name}: bei der eigenen Farbe bleiben</translation>
    </message>
    <message>
        <source>As it was read: {measurement}. Untick to follow the body.</source>
        <translation>Wie abgelesen: {measurement}. Abwählen, um dem Körper zu folgen.</translation>
    </message>
    <message>
        <source>Common practice; change any of them.</source>
        <translation>Übliche Praxis; ändern Sie nach Bedarf.</translation>
    </message>
    <message>
        <source>take the usual</source>
        <translation>die üblichen nehmen</translation>
    </message>
    <message>
        <source>keep as usual for {class_word}</source>
        <translation>als üblich behalten für {class_word}</translation>
    </message>
    <message>
        <source>intake page...</source>
        <translation>Fallaufnahme...</translation>
    </message>
    <message>
        <source>Geometry of the reading</source>
        <translation>Geometrie der Messung</translation>
    </message>
    <message>
        <source>Light of the reading</source>
        <translation>Licht der Messung</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>{degrees}° observer</source>
        <translation>{degrees}°-Beobachter</translation>
    </message>
    <message>
        <source>convert by {ways}</source>
        <translation>umrechnen durch {ways}</translation>
    </message>
    <message>
        <source>Without it, no difference to a prediction at 45/0, D65 is shown.</source>
        <translation>Ohne sie wird kein Unterschied zu einer Vorhersage in 45/0, D65 gezeigt.</translation>
    </message>
</context>
<context>
    <name>warming</name>
    <message>
        <source>Getting ready</source>
        <translation>Wird vorbereitet</translation>
    </message>
</context>
<context>
    <name>what if dialog</name>
    <message>
        <source>Working it out…</source>
        <translation>Wird ausgerechnet…</translation>
    </message>
    <message>
        <source>A direction: what a programme does to scattering is assumed by its class until a blank coupon has been read.</source>
        <translation>Eine Richtung: Was ein Programm mit der Streuung macht, wird nach seiner Klasse angenommen, bis ein ungefärbtes Plättchen gemessen ist.</translation>
    </message>
    <message>
        <source>Compare furnaces</source>
        <translation>Öfen vergleichen</translation>
    </message>
    <message>
        <source>The same plan, sintered “{here}” as planned, and in another programme.</source>
        <translation>Derselbe Plan, gesintert in „{here}“ wie geplant und in einem anderen Programm.</translation>
    </message>
    <message>
        <source>Other programme</source>
        <translation>Anderes Programm</translation>
    </message>
    <message>
        <source>planned | other</source>
        <translation>geplant | anders</translation>
    </message>
    <message>
        <source>Show both crowns</source>
        <translation>Beide Kronen zeigen</translation>
    </message>
    <message>
        <source>The materials have no other programme.</source>
        <translation>Die Materialien haben kein anderes Programm.</translation>
    </message>
    <message>
        <source>{label} in both programmes</source>
        <translation>{label} in beiden Programmen</translation>
    </message>
    <message>
        <source>time, cold to opening</source>
        <translation>Zeit, kalt bis zum Öffnen</translation>
    </message>
    <message>
        <source>class by time</source>
        <translation>Klasse nach Zeit</translation>
    </message>
    <message>
        <source>TP of a bare plate of 1.0 mm</source>
        <translation>TP einer ungefärbten Platte von 1.0 mm</translation>
    </message>
    <message>
        <source>strength class</source>
        <translation>Festigkeitsklasse</translation>
    </message>
    <message>
        <source>class {number}</source>
        <translation>Klasse {number}</translation>
    </message>
</context>
<context>
    <name>words</name>
    <message>
        <source>{first} and {last}</source>
        <translation>{first} und {last}</translation>
    </message>
    <message>
        <source>{first} or {last}</source>
        <translation>{first} oder {last}</translation>
    </message>
    <message>
        <source>1 jar</source>
        <translation>1 Napf</translation>
    </message>
    <message>
        <source>{count} jars</source>
        <translation>{count} Näpfe</translation>
    </message>
    <message>
        <source>1 coat</source>
        <translation>1 Auftrag</translation>
    </message>
    <message>
        <source>{count} coats</source>
        <translation>{count} Aufträge</translation>
    </message>
</context>
<context>
    <name>zone</name>
    <message>
        <source>{number} is not the number of an area.</source>
        <translation>{number} ist keine Nummer einer Fläche.</translation>
    </message>
    <message>
        <source>Areas run from 1 to 13.</source>
        <translation>Flächen haben die Nummern 1 bis 13.</translation>
    </message>
</context>
<context>
    <name>zone ground</name>
    <message>
        <source>laying out the zones</source>
        <translation>die Zonen werden ausgelegt</translation>
    </message>
    <message>
        <source>drawing the borders</source>
        <translation>die Grenzen werden gezogen</translation>
    </message>
    <message>
        <source>drawing the accents</source>
        <translation>die Akzente werden gezogen</translation>
    </message>
    <message>
        <source>zones proposed</source>
        <translation>Zonen vorgeschlagen</translation>
    </message>
    <message>
        <source>reading grooves and ridges</source>
        <translation>Furchen und Leisten werden gelesen</translation>
    </message>
    <message>
        <source>Which side of tooth {number} is mesial is not known.</source>
        <translation>Welche Seite von Zahn {number} mesial ist, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>Click its mesial side, or give the direction as three numbers.</source>
        <translation>Klicken Sie auf seine mesiale Seite, oder geben Sie die Richtung als drei Zahlen an.</translation>
    </message>
</context>
<context>
    <name>zone sliders</name>
    <message>
        <source>What was painted by hand stays.</source>
        <translation>Von Hand Gemaltes bleibt.</translation>
    </message>
    <message>
        <source>{name}, per cent {of_what}</source>
        <translation>{name}, Prozent {of_what}</translation>
    </message>
    <message>
        <source>How far the zones reach</source>
        <translation>Wie weit die Zonen reichen</translation>
    </message>
    <message>
        <source>Zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>usual</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>done</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>Back to how far the zones usually reach</source>
        <translation>Zurück zu den üblichen Zonengrenzen</translation>
    </message>
    <message>
        <source>neck climbs</source>
        <translation>Zahnhals steigt</translation>
    </message>
    <message>
        <source>of the wall</source>
        <translation>der Wand</translation>
    </message>
    <message>
        <source>cusps come down</source>
        <translation>Höcker kommen herab</translation>
    </message>
    <message>
        <source>fissures are wide</source>
        <translation>Fissuren sind breit</translation>
    </message>
    <message>
        <source>of their valleys</source>
        <translation>ihrer Täler</translation>
    </message>
    <message>
        <source>incisal edge comes down</source>
        <translation>Schneide kommt herab</translation>
    </message>
    <message>
        <source>{value} is out of range.</source>
        <translation>{value} liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give {low} to {high}.</source>
        <translation>Geben Sie {low} bis {high} an.</translation>
    </message>
</context>
<context>
    <name>zone sliders desk</name>
    <message>
        <source>how far they reach...</source>
        <translation>wie weit sie reichen...</translation>
    </message>
    <message>
        <source>Sliders: how high the neck climbs, how far the cusps come down</source>
        <translation>Regler: wie hoch der Zahnhals steigt, wie weit die Höcker herabkommen</translation>
    </message>
    <message>
        <source>finding grooves, ridges and walls</source>
        <translation>Furchen, Leisten und Wände werden gesucht</translation>
    </message>
    <message>
        <source>Finding landmarks</source>
        <translation>Formmerkmale werden gesucht</translation>
    </message>
    <message>
        <source>Moving borders</source>
        <translation>Grenzen werden verschoben</translation>
    </message>
    <message>
        <source>let the neck climb {share:.0%}</source>
        <translation>den Zahnhals um {share:.0%} steigen lassen</translation>
    </message>
    <message>
        <source>let the cusps come down {share:.0%}</source>
        <translation>die Höcker um {share:.0%} herabkommen lassen</translation>
    </message>
    <message>
        <source>make fissures {share:.0%} wide</source>
        <translation>Fissuren {share:.0%} breit machen</translation>
    </message>
</context>
<context>
    <name>zone softening</name>
    <message>
        <source>Softening the borders of areas</source>
        <translation>Grenzen der Flächen werden weicher</translation>
    </message>
</context>
<context>
    <name>zone tool desk</name>
    <message>
        <source>Brush: left drag paints, Esc takes the stroke back</source>
        <translation>Pinsel: links ziehen malt, Esc nimmt den Strich zurück</translation>
    </message>
    <message>
        <source>Eraser: left drag gives back or takes away, Esc takes the stroke back</source>
        <translation>Radierer: links ziehen gibt zurück oder nimmt weg, Esc nimmt den Strich zurück</translation>
    </message>
    <message>
        <source>Fill: click a place, and it is filled up to the creases around it. Esc: brush</source>
        <translation>Füllen: auf eine Stelle klicken, sie wird bis zu den Furchen ringsum gefüllt. Esc: Pinsel</translation>
    </message>
    <message>
        <source>Line: click where it starts, then where it ends. Esc: brush</source>
        <translation>Linie: auf den Anfang, dann auf das Ende klicken. Esc: Pinsel</translation>
    </message>
    <message>
        <source>Looking for creases</source>
        <translation>Furchen werden gesucht</translation>
    </message>
    <message>
        <source>One moment: looking for the creases of this crown</source>
        <translation>Einen Moment: Die Furchen dieser Krone werden gesucht</translation>
    </message>
    <message>
        <source>Line: now click where it ends. Esc: start again</source>
        <translation>Linie: jetzt auf das Ende klicken. Esc: neu beginnen</translation>
    </message>
    <message>
        <source>No way along the surface leads there: choose another end</source>
        <translation>Dorthin führt kein Weg auf der Oberfläche: Wählen Sie ein anderes Ende</translation>
    </message>
    <message>
        <source>Nothing changes there: it already is as the tool would make it</source>
        <translation>Dort ändert sich nichts: Es ist schon so, wie das Werkzeug es machen würde</translation>
    </message>
    <message>
        <source>grow {name} by {by_mm:g} mm</source>
        <translation>{name} um {by_mm:g} mm vergrößern</translation>
    </message>
    <message>
        <source>shrink {name} by {by_mm:g} mm</source>
        <translation>{name} um {by_mm:g} mm verkleinern</translation>
    </message>
    <message>
        <source>smooth the edge of {name}</source>
        <translation>den Rand von {name} glätten</translation>
    </message>
    <message>
        <source>{step}: done</source>
        <translation>{step}: erledigt</translation>
    </message>
    <message>
        <source>{step}: nothing to change</source>
        <translation>{step}: nichts zu ändern</translation>
    </message>
    <message>
        <source>What was corrected by hand: {half} to {other}</source>
        <translation>Von Hand Berichtigtes: {half} nach {other}</translation>
    </message>
    <message>
        <source>mirror corrections, {half} to {other}</source>
        <translation>Berichtigungen spiegeln, {half} nach {other}</translation>
    </message>
    <message>
        <source>The chosen area, {name}: {half} to {other}</source>
        <translation>Die gewählte Fläche, {name}: {half} nach {other}</translation>
    </message>
    <message>
        <source>mirror {name}, {half} to {other}</source>
        <translation>{name} spiegeln, {half} nach {other}</translation>
    </message>
    <message>
        <source>The chosen area, {name}</source>
        <translation>Die gewählte Fläche, {name}</translation>
    </message>
    <message>
        <source>reset {name} to the proposal</source>
        <translation>{name} auf den Vorschlag zurücksetzen</translation>
    </message>
    <message>
        <source>All zones and accents</source>
        <translation>Alle Zonen und Akzente</translation>
    </message>
    <message>
        <source>reset all areas to the proposal</source>
        <translation>alle Flächen auf den Vorschlag zurücksetzen</translation>
    </message>
    <message>
        <source>Streaks carry the coat of a step: add a step to the plan first</source>
        <translation>Streifen tragen den Auftrag eines Schritts weiter: Fügen Sie dem Plan zuerst einen Schritt hinzu</translation>
    </message>
    <message>
        <source>change streaks</source>
        <translation>Streifen ändern</translation>
    </message>
</context>
<context>
    <name>zone tools</name>
    <message>
        <source>The inner surface ends at the margin.</source>
        <translation>Die Innenfläche endet am Kronenrand.</translation>
    </message>
    <message>
        <source>Let the brush move the margin (menu Crown), or choose another area.</source>
        <translation>Lassen Sie den Pinsel den Kronenrand verschieben (Menü Krone), oder wählen Sie eine andere Fläche.</translation>
    </message>
    <message>
        <source>A length of {length_mm:g} mm is out of range.</source>
        <translation>Eine Länge von {length_mm:g} mm liegt außerhalb des Bereichs.</translation>
    </message>
    <message>
        <source>Give {least_mm:g} to {most_mm:g} mm.</source>
        <translation>Geben Sie {least_mm:g} bis {most_mm:g} mm an.</translation>
    </message>
    <message>
        <source>This crown has no {name} yet.</source>
        <translation>Diese Krone hat noch keine Fläche {name}.</translation>
    </message>
    <message>
        <source>Paint some of it first.</source>
        <translation>Malen Sie zuerst etwas davon.</translation>
    </message>
</context>
<context>
    <name>zoning</name>
    <message>
        <source>landmarks found</source>
        <translation>Merkmale gefunden</translation>
    </message>
    <message>
        <source>No tooth is named.</source>
        <translation>Kein Zahn ist genannt.</translation>
    </message>
    <message>
        <source>Name it, as in 46.</source>
        <translation>Nennen Sie ihn, etwa 46.</translation>
    </message>
    <message>
        <source>The body is no crown.</source>
        <translation>Der Körper ist keine Krone.</translation>
    </message>
    <message>
        <source>Choose another file, or check its length unit.</source>
        <translation>Wählen Sie eine andere Datei, oder prüfen Sie ihre Längeneinheit.</translation>
    </message>
</context>
</TS>
