<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name>settings</name>
    <message>
        <source>The settings hold until the program ends; they cannot be kept. {why}</source>
        <translation>Die Einstellungen gelten, bis das Programm endet; sie können nicht aufbewahrt werden. {why}</translation>
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
        <translation>wie der Desktop es wünscht, wo er es sagt</translation>
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
        <translation>Text, Felder und Zeichnungen gleichermaßen, ab dem nächsten Start. Das Fenster braucht einen Bildschirm vom Entsprechenden von 1024 x 700.</translation>
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
        <translation>Danach richtet sich, wie viele Tropfen ein Napf braucht. Üblich sind 0,05 mL, mit 15 % Fehler (USP &lt;1101&gt;). Neue Fälle beginnen damit, und der offene folgt, wenn er keinen eigenen Wert hat.</translation>
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
        <translation>Zählung übernehmen</translation>
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
        <translation>Diese Taste geben</translation>
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
</context>
</TS>
