using System.Text;
using PlatformForge.Projects.Presets;
using static System.FormattableString;

namespace PlatformForge.Projects.Schemas;

/// <summary>A stretch of a first track.</summary>
/// <param name="Radius">Radius of the curve, mm of the model; infinity where it is straight.</param>
/// <param name="IsLeft">Whether it turns to the left.</param>
public readonly record struct TrackPiece(double Radius, bool IsLeft)
{
    /// <summary>A straight one.</summary>
    public static TrackPiece Straight { get; } = new(double.PositiveInfinity, true);

    /// <summary>Whether it bends.</summary>
    public bool IsCurve => double.IsFinite(Radius);

    /// <summary>As the option states it.</summary>
    public override string ToString() => IsCurve ? Invariant($"{Radius:0.###} {(IsLeft ? "left" : "right")}") : "straight";
}

/// <summary>What is known of a new project before its file is there.</summary>
/// <param name="Scale">Its scale.</param>
/// <param name="Vehicles">Presets that run there; a coach of the program's own figures when there is none.</param>
/// <param name="Bed">Width and depth of the print bed, mm; null where it is not said.</param>
/// <param name="Track">Its stretches in a row; an example where there is none.</param>
public sealed record ShortFileChoice(Preset Scale, IReadOnlyList<Preset> Vehicles, (double Width, double Depth)? Bed, IReadOnlyList<TrackPiece> Track);

/// <summary>What may give way in a first file so that it is a sound design.</summary>
/// <param name="RunUp">Track before the platform and after it, mm: at least as long as the longest vehicle.</param>
/// <param name="Deck">Width of the deck, told for 4 mm to the foot.</param>
/// <param name="Side">Side of the track that the platform lies on.</param>
/// <param name="Bed">Width and depth of the print bed, mm.</param>
public sealed record ShortFileSizes(double RunUp, double Deck, string Side, (double Width, double Depth) Bed)
{
    /// <summary>The bed of a file where none is named, mm.</summary>
    public const double UsualBed = 220;

    /// <summary>The usual deck, which at 4 mm to the foot is 12 ft wide.</summary>
    public const double UsualDeck = 48;

    /// <summary>What a file has where nothing has to give way.</summary>
    public static ShortFileSizes Usual(ShortFileChoice choice) => new(0, UsualDeck, "right", choice.Bed ?? (UsualBed, UsualBed));
}

/// <summary>
/// A first project file that fits on a screen: only keys that a newcomer changes, each with what to measure for it. All others have their defaults; the
/// long file (<see cref="StartingFile"/>) lists them.
/// </summary>
public static class ShortFile
{
    /// <summary>Most lines it has.</summary>
    public const int MostLines = 60;

    /// <summary>Most stretches of track in it.</summary>
    public const int MostPieces = 3;

    // Longer than this, mm of the model, a first platform is only where its ramps ask for it.
    private const double LargePlatform = 1200;

    // Told for 4 mm to the foot, mm.
    private const double ExampleRadius = 900, RunUp = 350, LeastPlatform = 300, Platform = 650, BeforeCurve = 50, RunOut = 300;

    /// <summary>Most vehicles named in it.</summary>
    public const int MostVehicles = 6;

    /// <summary>The file with its usual sizes.</summary>
    public static string Write(ShortFileChoice choice) => Write(choice, ShortFileSizes.Usual(choice));

    /// <summary>The file with the sizes stated.</summary>
    public static string Write(ShortFileChoice choice, ShortFileSizes sizes)
    {
        var sheet = new ScaledExamples(choice.Scale);
        var (alignment, from, to) = Track(choice, sheet, sizes.RunUp);
        var text = new StringBuilder();
        Line(text, "# A first platform: change what follows to your own. Millimetres of the model; heights above rail top.");
        Line(text, "# See:  platformforge check FILE     Build:  platformforge build FILE     Every key:  platformforge init --full");
        Line(text, "");
        Line(text, "[layout]");
        Line(text, "name = \"Marrowby Cross\"", "it is engraved underneath");
        Line(text, Invariant($"scale = \"{choice.Scale.Name}\""), "platformforge presets scales");
        Line(text, Invariant($"rail_top = {sheet.Length(8)}"), "measure: baseboard to the rails' top");
        Line(text, "");
        string far = choice.Vehicles.Count == 0
            ? Invariant($"measure it, {sheet.Length(240)} past both ends (survey --how-much)") : "measure it: survey --how-much says how far";
        Line(text, "[[track]]", "piece by piece; or " + far);
        Line(text, "name = \"main\"");
        alignment.ForEach(s => Line(text, s));
        Line(text, "");
        WriteVehicles(text, choice.Vehicles, sheet);
        WriteClearance(text);
        WritePlatform(text, sheet, sizes, from, to);
        Line(text, "[printer]");
        Line(text, Invariant($"bed = [{sizes.Bed.Width:0.###}, {sizes.Bed.Depth:0.###}]"), "width and depth that your printer reaches");
        return text.ToString();
    }

    // Remarks stand below one another.
    private static void Line(StringBuilder text, string statement, string remark = "") =>
        text.Append(remark.Length == 0 ? statement : statement.PadRight(RemarkColumn) + " # " + remark).Append('\n');

    // The presets that were named, or a coach to be measured.
    private static void WriteVehicles(StringBuilder text, IReadOnlyList<Preset> vehicles, ScaledExamples sheet)
    {
        foreach (var vehicle in vehicles)
        {
            Line(text, "[[vehicle]]");
            Line(text, Invariant($"preset = \"{vehicle.Name}\""), "full-size figures: measure your model where it is close");
            Line(text, "");
        }

        if (vehicles.Count == 0)
        {
            Line(text, "[[vehicle]]", "the longest you have; a second one for the widest low down");
            Line(text, "name = \"my longest coach\"");
            Line(text, Invariant($"length = {sheet.Length(240)}"), "body, without buffers");
            Line(text, Invariant($"pivots = {sheet.Length(170)}"), "from bogie pivot to bogie pivot");
            Line(text, Invariant($"width = {sheet.Length(34)}"), "over the widest part");
            Line(text, Invariant($"sill = {{ height = {sheet.Length(13)} }}"), "door sill, for the gap you will see");
            Line(text, "");
        }
    }

    private static void WriteClearance(StringBuilder text)
    {
        Line(text, "[clearance]");
        Line(text, "running = 0.7", "air you want to see between edge and vehicle");
        Line(text, "print = 0.2", "how far a print may be off");
        Line(text, "fitting = 0.2", "how far you may fix it off its place");
        Line(text, "");
    }

    private static void WritePlatform(StringBuilder text, ScaledExamples sheet, ShortFileSizes sizes, double from, double to)
    {
        Line(text, "[[platform]]");
        Line(text, "name = \"main platform\"");
        Line(text, Invariant($"height = {sheet.Length(12)}"), "coping's top above rail top");
        Line(text, Invariant($"face = {{ track = \"main\", side = \"{sizes.Side}\", from = {from:0.##}, to = {to:0.##} }}"), "from and to along the track");
        Line(text, "ramps = { start = { gradient = 8 }, end = { gradient = 8 } }", "1 in 8");
        Line(text, Invariant($"deck = {{ width = {sheet.Length(sizes.Deck)} }}"));
        Line(text, Invariant($"line = {{ width = {sheet.Length(1)} }}"), "white line; take this line away for none");
        Line(text, "");
    }

    private const int RemarkColumn = 40;

    /// <summary>An example of a curve that is gentle at a scale.</summary>
    public static TrackPiece Example(Preset scale) => new(new ScaledExamples(scale).Lengths(ExampleRadius), true);

    // The lines that state the track, and where the platform begins and ends.
    private static (List<string> Lines, double From, double To) Track(ShortFileChoice choice, ScaledExamples sheet, double runUp)
    {
        TrackPiece[] pieces = choice.Track.Count > 0 ? [.. choice.Track] : [Example(choice.Scale)];
        double Whole(double mm) => Math.Ceiling(mm / 5) * 5;
        double from = Math.Max(sheet.Lengths(RunUp), Whole(runUp));
        if (!pieces.Any(p => p.IsCurve))
        {
            double last = from + Longest(sheet);
            return ([Invariant($"alignment = [{{ straight = {last + Math.Max(sheet.Lengths(Platform - 180), Whole(runUp)):0.##} }}]")], from, last);
        }

        double at = from + sheet.Lengths(BeforeCurve), bent = 0;
        List<string> lines = ["alignment = [", Invariant($"  {{ straight = {at:0.##} }},")];
        foreach (var piece in pieces)
        {
            var (eased, curve) = Lengths(piece, pieces.Length, sheet);
            if (!piece.IsCurve)
            {
                lines.Add(Invariant($"  {{ straight = {curve:0.##} }},"));
                (at, bent) = (at + curve, at + curve);
                continue;
            }

            string radius = Invariant($"{piece.Radius:0.###}"), hand = piece.IsLeft ? "left" : "right";
            lines.Add(Invariant($"  {{ transition = {eased:0.##}, to_radius = {radius}, hand = \"{hand}\" }},"));
            lines.Add(Invariant($"  {{ curve = {radius}, length = {curve:0.##}, hand = \"{hand}\" }},"));
            lines.Add(Invariant($"  {{ transition = {eased:0.##}, hand = \"{hand}\" }},"));
            (at, bent) = (at + (2 * eased) + curve, at + eased + curve);
        }

        double to = Math.Max(Math.Min(Math.Floor(bent - sheet.Lengths(20)), from + Longest(sheet)), from + sheet.Lengths(LeastPlatform));
        lines.AddRange([Invariant($"  {{ straight = {Whole(Math.Max(sheet.Lengths(RunOut), to + runUp - at)):0.##} }},"), "]"]);
        return (lines, from, to);
    }

    // In large scales a first platform is short: it is printed in pieces all the same.
    private static double Longest(ScaledExamples sheet) => Math.Min(sheet.Lengths(Platform), Math.Max(LargePlatform, sheet.Lengths(LeastPlatform)));

    // Of a stretch: its easement at either end, and its curve or straight. A sharp curve is a short one, so that the track does not come round to itself.
    private static (double Eased, double Curve) Lengths(TrackPiece piece, int pieces, ScaledExamples sheet)
    {
        (double eased, double curve) = pieces switch { 1 => (150.0, 470.0), 2 => (100, 250), _ => (80, 170) };
        return piece.IsCurve
            ? (Math.Min(sheet.Lengths(eased), sheet.Rounded(0.4 * piece.Radius / pieces)),
                Math.Min(sheet.Lengths(curve), sheet.Rounded(1.2 * piece.Radius / pieces)))
            : (0, sheet.Lengths(curve));
    }
}
