using System.Text;
using PlatformForge.Projects.Presets;
using static System.FormattableString;

namespace PlatformForge.Projects.Schemas;

/// <summary>What is known of a new project before its file is there.</summary>
/// <param name="Scale">Its scale.</param>
/// <param name="Vehicles">Presets that run there; a coach of the program's own figures when there is none.</param>
/// <param name="Bed">Width and depth of the print bed, mm.</param>
/// <param name="Radius">Radius of the curve, mm of the model; null takes an example, and infinity a straight track.</param>
/// <param name="IsLeft">Whether it turns to the left.</param>
public sealed record ShortFileChoice(Preset Scale, IReadOnlyList<Preset> Vehicles, (double Width, double Depth) Bed, double? Radius, bool IsLeft);

/// <summary>
/// A first project file that fits on a screen: only keys that a newcomer changes, each with what to measure for it. All others have their defaults; the
/// long file (<see cref="StartingFile"/>) lists them.
/// </summary>
public static class ShortFile
{
    /// <summary>Most lines it has.</summary>
    public const int MostLines = 60;

    private const double ExampleRadius = 900; // at 4 mm to the foot
    private const double CurveLength = 470;
    private const double StraightLength = 1470;

    /// <summary>Most vehicles named in it.</summary>
    public const int MostVehicles = 6;

    public static string Write(ShortFileChoice choice)
    {
        var sheet = new ScaledExamples(choice.Scale);
        string L(double mm) => sheet.Length(mm);
        var text = new StringBuilder();
        void Line(string statement, string remark = "") => text.Append(remark.Length == 0 ? statement : statement.PadRight(RemarkColumn) + " # " + remark).Append('\n');
        Line("# A first platform: change what follows to your own. Millimetres of the model; heights above rail top.");
        Line("# See:  platformforge check FILE     Build:  platformforge build FILE     Every key:  platformforge init --full");
        Line("");
        Line("[layout]");
        Line("name = \"Marrowby Cross\"", "it is engraved underneath");
        Line(Invariant($"scale = \"{choice.Scale.Name}\""), "platformforge presets scales");
        Line(Invariant($"rail_top = {L(8)}"), "measure: baseboard to the rails' top");
        Line("");
        Line("[[track]]", "piece by piece from its start; docs/surveys.md if you measured it");
        Line("name = \"main\"");
        Track(choice, sheet, s => Line(s));
        Line("");
        foreach (var vehicle in choice.Vehicles)
        {
            Line("[[vehicle]]");
            Line(Invariant($"preset = \"{vehicle.Name}\""), "full-size figures: measure your model where it is close");
            Line("");
        }

        if (choice.Vehicles.Count == 0)
        {
            Line("[[vehicle]]", "the longest you have; a second one for the widest low down");
            Line("name = \"my longest coach\"");
            Line(Invariant($"length = {L(240)}"), "body, without buffers");
            Line(Invariant($"pivots = {L(170)}"), "from bogie pivot to bogie pivot");
            Line(Invariant($"width = {L(34)}"), "over the widest part");
            Line(Invariant($"sill = {{ height = {L(13)} }}"), "door sill, for the gap you will see");
            Line("");
        }

        Line("[clearance]");
        Line("running = 0.7", "air you want to see between edge and vehicle");
        Line("print = 0.2", "how far a print may be off");
        Line("fitting = 0.2", "how far you may fix it off its place");
        Line("");
        Line("[[platform]]");
        Line("name = \"main platform\"");
        Line(Invariant($"height = {L(12)}"), "coping's top above rail top");
        Line(Invariant($"face = {{ track = \"main\", side = \"right\", from = {L(350)}, to = {L(1000)} }}"), "from and to along the track");
        Line("ramps = { start = { gradient = 8 }, end = { gradient = 8 } }", "1 in 8");
        Line(Invariant($"deck = {{ width = {L(48)} }}"));
        Line(Invariant($"line = {{ width = {L(1)} }}"), "white line; take this line away for none");
        Line("");
        Line("[printer]");
        Line(Invariant($"bed = [{choice.Bed.Width:0.###}, {choice.Bed.Depth:0.###}]"), "width and depth that your printer reaches");
        return text.ToString();
    }

    private const int RemarkColumn = 40;

    private static void Track(ShortFileChoice choice, ScaledExamples sheet, Action<string> line)
    {
        if (choice.Radius is { } straight && double.IsInfinity(straight))
        {
            line(Invariant($"alignment = [{{ straight = {sheet.Length(StraightLength)} }}]"));
            return;
        }

        string radius = choice.Radius is { } stated ? Invariant($"{stated:0.###}") : sheet.Length(ExampleRadius), hand = choice.IsLeft ? "left" : "right";
        line("alignment = [");
        line(Invariant($"  {{ straight = {sheet.Length(400)} }},"));
        line(Invariant($"  {{ transition = {sheet.Length(150)}, to_radius = {radius}, hand = \"{hand}\" }},"));
        line(Invariant($"  {{ curve = {radius}, length = {sheet.Length(CurveLength)}, hand = \"{hand}\" }},"));
        line(Invariant($"  {{ transition = {sheet.Length(150)}, hand = \"{hand}\" }},"));
        line(Invariant($"  {{ straight = {sheet.Length(300)} }},"));
        line("]");
    }
}
