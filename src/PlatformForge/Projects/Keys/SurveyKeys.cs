using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[track.survey]</c>.</summary>
internal static class SurveyKeys
{
    private static readonly NumberRange Along = NumberRange.From(-1e5, 1e6), Length = NumberRange.Over0(1e5);

    private static readonly (string, MeasuredPart)[] Parts = [("centre", MeasuredPart.Centre), ("running-edge", MeasuredPart.RunningEdge),
        ("outer-face", MeasuredPart.OuterFace)];

    private static readonly (string, Rail)[] Rails = [("left", Rail.Left), ("right", Rail.Right)];

    private static readonly string[] Units = ["mm", "cm", "m", "in", "ft"];

    private static readonly KeyTable<SurveySourceForm> Also = Source(new KeyTable<SurveySourceForm>(_ => new()), f => f, (_, f) => f);

    // Keys that mean something for some kinds of survey only, and for which.
    private static readonly (string Key, string[] Kinds)[] OfKinds =
    [
        ("side", ["string", "versines"]),
        ("chord", ["versines"]),
        ("spacing", ["versines"]),
        ("closing", ["versines"]),
        ("element", ["drawing"]),
        ("calibrate", ["drawing"]),
        ("reverse", ["drawing"]),
    ];

    private static readonly KeyTable<ClosingChord> Closing = new KeyTable<ClosingChord>(_ => new(double.NaN, double.NaN, double.NaN))
        .Length("from", Along, "Station of its first end.", c => c.From, (c, v) => c with { From = v }, required: true)
        .Length("to", Along, "Station of its last end.", c => c.To, (c, v) => c with { To = v }, required: true)
        .Length("length", Length, "Its length, measured once from end to end.", c => c.Length, (c, v) => c with { Length = v }, required: true)
        .Length("versine", Along, "Height of the track over its middle, signed as the versines are.", c => c.Versine, (c, v) => c with { Versine = v })
        .Length("error", Length, "How far these may be off; left out, the ruler error.", c => c.Error, (c, v) => c with { Error = v });

    private static readonly KeyTable<Calibration> Calibrate = new KeyTable<Calibration>(_ => new(double.NaN))
        .Length("length", Length, "True length of a line that is drawn for this.", c => c.Length, (c, v) => c with { Length = v }, required: true)
        .Text("element", "Id (SVG) or layer (DXF) of that line.", c => c.Element, (c, v) => c with { Element = v });

    public static KeyTable<SurveyForm> Table { get; } = Source(
        new KeyTable<SurveyForm>(_ => new())
            .Text(
                "kind",
                "How it was measured: offsets from one stretched string, points, versines, or a drawing.",
                s => s.Kind,
                (s, v) => s with { Kind = v },
                true,
                "string",
                "points",
                "versines",
                "drawing"),
        s => s.First,
        (s, f) => s with { First = f })
        .Length(
            "ruler_error",
            NumberRange.From(0.01, 50),
            "The most by which a careful reading may be off, either way.",
            s => s.RulerError,
            (s, v) => s with { RulerError = v })
        .Choice(
            "side",
            "Side of the string on which offsets are positive, or hand of a curve whose versines are positive.",
            s => s.Side,
            (s, v) => s with { Side = v },
            [("left", Hand.Left), ("right", Hand.Right)])
        .Length("chord", Length, "Length of the chord that versines were measured over.", s => s.Chord, (s, v) => s with { Chord = v })
        .Length("spacing", Length, "Distance between stations that the file only numbers.", s => s.Spacing, (s, v) => s with { Spacing = v })
        .Table(
            "closing",
            "One long chord over versines, measured once, which takes the drift out of them.",
            Closing,
            s => s.Closing,
            (s, v) => s with { Closing = v })
        .Text("element", "Id (SVG) or layer (DXF) of the drawn line.", s => s.Element, (s, v) => s with { Element = v })
        .Table(
            "calibrate",
            "A drawn line of known length, where the drawing states no unit.",
            Calibrate,
            s => s.Calibration,
            (s, v) => s with { Calibration = v })
        .Flag("reverse", "Whether the track runs against the way it was drawn.", s => s.Reverse, (s, v) => s with { Reverse = v })
        .Choice("laid",
            "How the track was laid: flexible (no kinks, curves come and go over a length), sectional (pieces with joints), or unknown. "
                + "It bounds what the track can do between two readings.",
            s => s.Laid, (s, v) => s with { Laid = v }, [("unknown", LaidAs.Unknown), ("flexible", LaidAs.Flexible), ("sectional", LaidAs.Sectional)])
        .Length(
            "least_radius",
            Length,
            "Least radius of the track where it was measured; left out, what is usual in the scale: 380 in 4 mm (common practice).",
            s => s.LeastRadius,
            (s, v) => s with { LeastRadius = v })
        .Length("least_ease", Length,
            "Flexible track: least length over which a curve of the least radius comes or goes; left out, what is usual in the scale: "
                + "200 in 4 mm (common practice).",
            s => s.LeastEase, (s, v) => s with { LeastEase = v })
        .Numbers(
            "radii",
            Length,
            "mm",
            "Sectional track: radii of its pieces, beside straights; left out, any from the least radius up.",
            (s, v) => s with { Radii = v })
        .Number(
            "greatest_kink",
            NumberRange.From(0.01, 15),
            "degrees",
            "Sectional track: greatest change of direction at a joint; left out, 2 (common practice).",
            s => s.GreatestKink,
            (s, v) => s with { GreatestKink = v })
        .Numbers("joints", Along, "mm",
            "Sectional track: its joints, measured as the readings are: along the string, or along the track from the first point; "
                + "left out, they are found as far as the readings show them.",
            (s, v) => s with { Joints = v })
        .Tables("also", "A further file of the same track, such as the other rail.", Also, (a, _) => a, (s, v) => s with { Also = v })
        .Check((s, table, key, reading) =>
        {
            if (s.Kind == "versines" && s.Chord is null)
            {
                reading.Fault(
                    "PF1009",
                    key + ".chord",
                    table.Place,
                    "The survey is of versines, but has no chord.",
                    "Add chord, the length in mm that they were measured over, such as chord = 200.",
                    Cure.Set(key + ".chord", 200));
            }

            CheckLaid(s, table, key, reading);
            CheckJoints(s, table, key, reading);
            foreach (var (name, kinds) in OfKinds.Where(k => s.Kind.Length > 0 && !k.Kinds.Contains(s.Kind, StringComparer.Ordinal)))
            {
                if (table.Find(name) is { } idle)
                {
                    reading.Fault(
                        "PF1013",
                        $"{key}.{name}",
                        idle.Place,
                        $"{name} means nothing for a survey of kind \"{s.Kind}\".",
                        $"Leave it out, or check the kind: {name} belongs to {string.Join(" and ", kinds.Select(k => $"\"{k}\""))}.",
                        Cure.LeaveOut($"{key}.{name}"));
                }
            }
        });

    // What is said of pieces means nothing for other track, and joints nothing where no places are measured.
    private static void CheckLaid(SurveyForm form, TreeTable table, string key, KeyReading reading)
    {
        foreach (string name in new[] { "radii", "greatest_kink", "joints" })
        {
            if (table.Find(name) is not { } idle)
            {
                continue;
            }

            if (form.Laid != LaidAs.Sectional)
            {
                reading.Fault(
                    "PF1013",
                    $"{key}.{name}",
                    idle.Place,
                    $"{name} is about the pieces of sectional track, which this survey does not say was measured.",
                    $"Add laid = \"sectional\", or leave {name} out.",
                    Cure.Text(key + ".laid", "sectional"));
            }
            else if (form.Kind == "versines" && name == "joints")
            {
                reading.Fault(
                    "PF1013",
                    $"{key}.{name}",
                    idle.Place,
                    "Versines tell no places, so that stated joints have none on the line.",
                    "Leave joints out, or measure offsets from a string.",
                    Cure.LeaveOut($"{key}.{name}"));
            }
        }
    }

    // A piece is longer than this, mm.
    private const double OneJoint = 1;

    // Joints may be stated in any order; between two at one place there is no piece.
    private static void CheckJoints(SurveyForm form, TreeTable table, string key, KeyReading reading)
    {
        double[] rising = [.. form.Joints.Order()];
        (double One, double Other)[] twice = [.. rising.Zip(rising.Skip(1)).Where(p => p.Second - p.First < OneJoint)];
        if (twice.Length == 0 || table.Find("joints") is not { } joints)
        {
            return;
        }

        static string Pair((double One, double Other) t) => t.One == t.Other ? Invariant($"{t.One:0.###}") : Invariant($"{t.One:0.###} and {t.Other:0.###}");
        string told = string.Join(", ", twice.Select(Pair).Distinct().Take(InputLimits.MessagesOfAKind));
        double[] once = [.. rising.Where((j, i) => i == 0 || j - rising[i - 1] >= OneJoint)];
        string right = string.Join(", ", once.Take(JointsTold).Select(j => Invariant($"{j:0.###}")));
        reading.Fault(
            "PF2203",
            key + ".joints",
            joints.Place,
            $"One joint of joints is given more than once, or two lie within {OneJoint} mm of each other: {told}.",
            $"State each joint once: joints = [{right}{(once.Length > JointsTold ? ", ..." : "")}].");
    }

    // Joints told in a remedy.
    private const int JointsTold = 20;

    // Nothing is guessed of what was measured: a rail has a side, its outer face a width.
    private static void CheckMeasured(SurveySourceForm form, TreeTable table, string key, KeyReading reading)
    {
        if (form.Measured != MeasuredPart.Centre && table.Find("rail") is null)
        {
            reading.Fault(
                "PF1009",
                key + ".rail",
                table.Find("measured")!.Place,
                $"{KeyReading.LastOf(key)} measures a rail, but does not say which.",
                "Add rail = \"left\" or rail = \"right\", seen along the track.",
                Cure.Text(key + ".rail", "left"));
        }

        if (form.Measured == MeasuredPart.OuterFace && !(form.RailWidth > 0))
        {
            reading.Fault(
                "PF1009",
                key + ".rail_width",
                (table.Find("rail_width") ?? table.Find("measured")!).Place,
                $"{KeyReading.LastOf(key)} measures the outer face of a rail, but has no width of its head.",
                "Add rail_width, the width of the rail's head in mm, such as rail_width = 0.9, or measure the running edge.",
                Cure.Set(key + ".rail_width", 0.9));
        }

        if (form.Measured == MeasuredPart.Centre && table.Find("measured") is null && (table.Find("rail") ?? table.Find("rail_width")) is { } rail)
        {
            reading.Fault(
                "PF1009",
                key + ".measured",
                rail.Place,
                $"{KeyReading.LastOf(key)} has {rail.Name}, but does not say that a rail was measured.",
                "Add measured = \"running-edge\" or measured = \"outer-face\", or leave it out where the centre was measured.",
                Cure.Text(key + ".measured", "running-edge"));
        }
    }

    private static KeyTable<T> Source<T>(KeyTable<T> table, Func<T, SurveySourceForm> get, Func<T, SurveySourceForm, T> set) => table
        .Text(
            "file",
            "The file with the readings, beside the project: CSV, SVG or DXF.",
            t => get(t).File,
            (t, v) => set(t, get(t) with { File = v }),
            required: true)
        .Choice("measured", "What the ruler was held to.", t => get(t).Measured, (t, v) => set(t, get(t) with { Measured = v }), Parts)
        .Choice(
            "rail",
            "At which rail, seen along the track; for the centre it does not matter.",
            t => get(t).Rail,
            (t, v) => set(t, get(t) with { Rail = v }),
            Rails)
        .Length(
            "rail_width",
            NumberRange.From(0, 20),
            "Width of a rail's head, where the outer face was measured.",
            t => get(t).RailWidth,
            (t, v) => set(t, get(t) with { RailWidth = v }))
        .Text(
            "unit",
            "Unit of figures where the file does not say; tables are taken to be in mm, drawings have to say.",
            t => get(t).Unit,
            (t, v) => set(t, get(t) with { Unit = v }),
            false,
            Units)
        .Check((t, node, key, reading) => CheckMeasured(get(t), node, key, reading));
}
