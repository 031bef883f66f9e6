using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys;

/// <summary>
/// Puts the bodies of a set together: a further body takes over from the first what it leaves out of its length, pivots, width, heights, bogie wheelbases,
/// taper and sill. Ends
/// that differ from one another, ahead, parts and trucks are each body's own. A shared bogie is one and the same, and where it stands decides how far the
/// body's middle lies ahead of
/// midway between its pivots.
/// </summary>
internal static class SetForm
{
    // Figures from a calliper agree to this, mm.
    private const double Agrees = 0.05;

    /// <summary>The bodies as vehicles, from the leading end, and then their trucks.</summary>
    public static IReadOnlyList<Vehicle> Bodies(VehicleForm set)
    {
        var forms = Whole(set);
        var bodies = new List<Vehicle>();
        for (int i = 0; i < forms.Count; i++)
        {
            var form = forms[i];
            var gangways = new List<VehiclePart>();
            double front = form.Ahead + (form.Length / 2), rear = form.Ahead - (form.Length / 2);
            if (i > 0 && form.Gangway is { } toFront)
            {
                gangways.Add(VehiclePart.Box("gangway, front", PartCarrier.Body, front, front + (form.Gap / 2), toFront.Width, toFront.Low, toFront.High));
            }

            if (i < forms.Count - 1 && forms[i + 1].Gangway is { } toRear)
            {
                gangways.Add(VehiclePart.Box("gangway, rear", PartCarrier.Body, rear - (forms[i + 1].Gap / 2), rear, toRear.Width, toRear.Low, toRear.High));
            }

            var body = form.ToBody(gangways.Where(g => g.Outline[1].X > g.Outline[0].X)) with { SetName = set.Name };
            bodies.Add(form.Hung ? Hanging(body, forms[i - 1], form, forms[i + 1]) : body);
        }

        return [.. bodies, .. forms.SelectMany(f => TruckForm.Vehicles(f, set.Name))];
    }

    /// <summary>Faults of a set as a whole: figures that a shared bogie decides but that say otherwise.</summary>
    public static void Check(VehicleForm set, TreeTable table, string key, KeyReading reading)
    {
        if (set.Bodies.Count == 0)
        {
            return;
        }

        var items = (table.Find("body")?.Value as TreeList)?.Items;
        var whole = Whole(set);
        for (int i = 0; i <= set.Bodies.Count; i++)
        {
            var body = new BodyKeys(
                i == 0 ? set : set.Bodies[i - 1],
                i == 0 ? table : items?[i - 1] as TreeTable ?? table,
                i == 0 ? key : Invariant($"{key}.body[{i - 1}]"),
                reading,
                i < set.Bodies.Count && set.Bodies[i].JoinedBy == BodyJointKind.SharedBogie ? set.Bodies[i].Gap : null)
            {
                SharesFront = i > 0 && set.Bodies[i - 1].JoinedBy == BodyJointKind.SharedBogie,
            };
            if (i > 0)
            {
                Joint(set, i, body);
                Hung(set, i, body);
            }

            SharedBogie(body);
            Pivots(body, Or(body.Form.Length, set.Length), whole[i]);
            WheelRoom.Doors(whole[i], body.FaultOfSill);
        }
    }

    // What the bogie that a body shares decides, and that is stated nevertheless.
    private static void SharedBogie(in BodyKeys body)
    {
        if ((body.SharesFront || body.SharesRear) && body.Form.Ahead != 0)
        {
            body.Fault(
                "ahead",
                Invariant($"ahead is {body.Form.Ahead:0.####} mm, but the bogie this body shares decides where it lies over its pivots."),
                "Leave ahead out here: length, pivots and gap tell it.",
                Cure.LeaveOut(body.At + ".ahead"));
        }

        if (body.SharesFront && body.Form.TrailingBogieWheelbase is not null)
        {
            body.Fault(
                "trailing_bogie_wheelbase",
                "trailing_bogie_wheelbase is given for a body whose leading bogie is the shared one.",
                "Give bogie_wheelbase: it is that of the bogie behind.",
                Cure.Rename(body.At + ".trailing_bogie_wheelbase", "bogie_wheelbase"));
        }
    }

    // Pivots that two shared bogies decide, or else the room that wheels have under the body. Length in mm.
    private static void Pivots(in BodyKeys body, double length, VehicleForm whole)
    {
        var form = body.Form;
        double between = length + ((body.SharesFront ? form.Gap : 0) + (body.GapBehind ?? 0)) / 2;
        if (body is { SharesFront: true, GapBehind: { } behind } && double.IsFinite(form.Pivots) && Math.Abs(form.Pivots - between) > Agrees)
        {
            body.Fault(
                "pivots",
                Invariant($"pivots is {form.Pivots:0.####} mm, but a body of {length:0.####} mm that shares both bogies, with gaps of {form.Gap} ")
                + Invariant($"and {behind:0.####} mm to its neighbours, has them {between:0.##} mm apart."),
                Invariant($"Leave pivots out, or give {between:0.##} mm."),
                Cure.LeaveOut(body.At + ".pivots"));
        }
        else if (!whole.Hung)
        {
            Room(whole, (body.SharesFront, body.SharesRear), between - length, body.FaultOf);
        }
    }

    private static void Room(VehicleForm body, (bool Front, bool Rear) shares, double gaps, VehicleFault fault)
    {
        if (shares is (false, false))
        {
            WheelRoom.Own(body, fault);
        }
        else
        {
            double trailing = body.TrailingBogieWheelbase ?? body.BogieWheelbase;
            WheelRoom.Shared(body, gaps, shares is (true, true) ? null : shares.Front ? trailing : body.BogieWheelbase, fault);
        }
    }

    // The bodies ahead and behind carry it at hinges midway in the gaps: their frames are its bogies.
    private static Vehicle Hanging(Vehicle body, VehicleForm ahead, VehicleForm own, VehicleForm behind) => body with
    {
        Hangs = true,
        LeadingWheelbase = ahead.Pivots,
        TrailingWheelbase = behind.Pivots,
        LeadingPivotAhead = ahead.Ahead - ((ahead.Length + own.Gap) / 2),
        TrailingPivotAhead = behind.Ahead + ((behind.Length + behind.Gap) / 2),
    };

    // What joins a body to the one ahead: a hinge where one of the two is hung, and only there.
    private static void Joint(VehicleForm set, int i, in BodyKeys body)
    {
        var ahead = i == 1 ? set : set.Bodies[i - 2];
        bool hinged = body.Form.JoinedBy == BodyJointKind.Hinge;
        if (hinged && !body.Form.Hung && !ahead.Hung)
        {
            body.Fault(
                "joined_by",
                "joined_by is hinge, but neither this body nor the one ahead is hung.",
                "Say hung = true for the body without wheels, or join them by a coupling.",
                Cure.Text(body.At + ".joined_by", "coupling"));
        }
        else if (!hinged && ahead.Hung)
        {
            body.Fault(
                "joined_by",
                "the body ahead is hung, so a hinge joins it to this one.",
                "Give joined_by = \"hinge\".",
                Cure.Text(body.At + ".joined_by", "hinge"));
        }
    }

    // A body without wheels needs a hinge at either end and axles at what it hangs on.
    private static void Hung(VehicleForm set, int i, in BodyKeys body)
    {
        if (!body.Form.Hung)
        {
            return;
        }

        var ahead = i == 1 ? set : set.Bodies[i - 2];
        var behind = i < set.Bodies.Count ? set.Bodies[i] : null;
        if (behind is null || body.Form.JoinedBy != BodyJointKind.Hinge)
        {
            body.Fault(
                "hung",
                behind is null ? "the last body is hung: it has to hang at a body behind too." : "a hung body has to be joined by a hinge.",
                "A body without wheels hangs between two that have them, joined_by = \"hinge\" at either end.");
        }
        else if (ahead.Hung || behind.Hung || Or(ahead.BogieWheelbase, set.BogieWheelbase) > 0 || Or(behind.BogieWheelbase, set.BogieWheelbase) > 0)
        {
            body.Fault(
                "hung",
                "a hung body hangs at bodies whose axles stand in their own frames; one beside it is hung itself or has bogies.",
                "Tell the bodies ahead and behind without bogie_wheelbase: pivots is the distance of their end axles.");
        }
    }

    // Every body with all its figures.
    private static List<VehicleForm> Whole(VehicleForm set)
    {
        var forms = new List<VehicleForm>();
        double last = set.TrailingBogieWheelbase ?? set.BogieWheelbase;
        int count = set.Bodies.Count + 1;
        for (int i = 0; i < count; i++)
        {
            var form = i == 0 ? set : Filled(set.Bodies[i - 1], set, last);
            bool sharesFront = i > 0 && form.JoinedBy == BodyJointKind.SharedBogie, sharesRear = i < count - 1
                && set.Bodies[i].JoinedBy == BodyJointKind.SharedBogie;
            double halfFront = sharesFront ? form.Gap / 2 : 0, halfRear = sharesRear ? set.Bodies[i].Gap / 2 : 0;
            double pivots = sharesFront && sharesRear ? form.Length + halfFront + halfRear : Or(form.Pivots, set.Pivots);
            double ahead = sharesRear ? ((form.Length - pivots) / 2) + halfRear : sharesFront ? ((pivots - form.Length) / 2) - halfFront : form.Ahead;
            if (sharesFront && sharesRear)
            {
                ahead = ((pivots - form.Length) / 2) - halfFront;
            }

            if (form.Hung && i < count - 1)
            {
                (pivots, ahead) = (form.Length + ((form.Gap + set.Bodies[i].Gap) / 2), (set.Bodies[i].Gap - form.Gap) / 4);
            }

            string own = i == 0 ? set.BodyName : form.Name;
            string name = own.Length > 0 ? Invariant($"{set.Name}, {own}") : Invariant($"{set.Name}, body {i + 1} of {count}");
            forms.Add(form with { Name = name, Pivots = pivots, Ahead = ahead, EitherWay = set.EitherWay, LeastRadius = set.LeastRadius, Bodies = [] });
            last = forms[^1].TrailingBogieWheelbase ?? forms[^1].BogieWheelbase;
        }

        return forms;
    }

    private static VehicleForm Filled(VehicleForm body, VehicleForm first, double shared)
    {
        double own = Or(body.BogieWheelbase, first.BogieWheelbase), width = Or(body.Width, first.Width);
        bool shares = body.JoinedBy == BodyJointKind.SharedBogie, ends = TakesEnds(body, first);
        return body with
        {
            Length = Or(body.Length, first.Length),
            Width = width,
            Low = Or(body.Low, first.Low),
            High = Or(body.High, first.High),
            BogieWheelbase = shares ? shared : own,
            TrailingBogieWheelbase = shares ? own : body.TrailingBogieWheelbase ?? (double.IsFinite(body.BogieWheelbase) ? null : first.TrailingBogieWheelbase),
            FrontTaper = ends ? first.FrontTaper : body.FrontTaper,
            RearTaper = ends ? first.RearTaper : body.RearTaper,
            Sill = body.Sill ?? (first.Sill is { } s ? s with { From = null, To = null } : null),
        };
    }

    // A taper of both ends alike is the set's; one of a single end is that body's own, as of a cab.
    private static bool TakesEnds(VehicleForm body, VehicleForm first) =>
        body.FrontTaper is null && body.RearTaper is null && first.FrontTaper is { } taper && ReferenceEquals(taper, first.RearTaper)
        && taper.Width <= Or(body.Width, first.Width) && 2 * taper.Length <= Or(body.Length, first.Length);

    /// <summary>Notes of what every further body of a set takes over from the first, with the figures.</summary>
    public static IEnumerable<Finding> TakenOver(VehicleForm set)
    {
        var whole = set.Bodies.Count == 0 ? [] : Whole(set);
        for (int i = 1; i < whole.Count; i++)
        {
            var (said, full) = (set.Bodies[i - 1], whole[i]);
            bool shares = said.JoinedBy == BodyJointKind.SharedBogie, sharesBoth = shares && i + 1 < whole.Count
                && set.Bodies[i].JoinedBy == BodyJointKind.SharedBogie;
            string[] taken =
            [
                .. Taken("length", said.Length, full.Length),
                .. said.Hung || sharesBoth ? [] : Taken("pivots", said.Pivots, full.Pivots),
                .. Taken("width", said.Width, full.Width),
                .. Taken("low", said.Low, full.Low),
                .. Taken("high", said.High, full.High),
                .. said.Hung ? [] : Taken("bogie_wheelbase", said.BogieWheelbase, shares ? full.TrailingBogieWheelbase ?? 0 : full.BogieWheelbase),
                .. !shares && said.TrailingBogieWheelbase is null && full.TrailingBogieWheelbase is { } trailing
                    ? [Invariant($"trailing_bogie_wheelbase {trailing:0.###}")] : Array.Empty<string>(),
                .. TakesEnds(
                    said,
                    set) ? [Invariant($"taper of {full.FrontTaper!.Length:0.###} to a width of {full.FrontTaper.Width:0.###}")] : Array.Empty<string>(),
                .. said.Sill is null && full.Sill is { } sill ? [Invariant($"sill at {sill.Height:0.###}")] : Array.Empty<string>(),
            ];
            if (taken.Length > 0)
            {
                yield return Finding.Note(
                    "PF3070",
                    Invariant($"{set.Key}.body[{i - 1}]"),
                    Invariant($"'{full.Name}' takes over from the first body of its set, mm: {string.Join(", ", taken)}."));
            }
        }
    }

    private static string[] Taken(string name, double said, double full) => double.IsFinite(said) ? [] : [Invariant($"{name} {full:0.###}")];

    private static double Or(double stated, double otherwise) => double.IsFinite(stated) ? stated : otherwise;

    /// <summary>A body of a set as it is stated: its form, its table and key, and the gap to the body behind in mm where they share a bogie.</summary>
    private readonly record struct BodyKeys(VehicleForm Form, TreeTable Own, string At, KeyReading Reading, double? GapBehind)
    {
        public bool SharesFront { get; init; }

        public bool SharesRear => GapBehind is not null;

        /// <summary>A fault of one of its keys, told where that stands, or where the body does if it is left out.</summary>
        public void Fault(string name, string message, string remedy, Cure? cure = null) =>
            Reading.Fault("PF1014", Invariant($"{At}.{name}"), (Own.Find(name)?.Value ?? Own).Place, message, remedy, cure);

        /// <summary>The same with the figure that is right, if there is one.</summary>
        public void FaultOf(string name, string message, string remedy, double? right) =>
            Fault(name, message, remedy, right is { } r ? Cure.Set(Invariant($"{At}.{name}"), r) : null);

        /// <summary>A fault of a key of its sill.</summary>
        public void FaultOfSill(string name, string message, string remedy, double? right) => Reading.Fault(
            "PF1014",
            Invariant($"{At}.sill.{name}"),
            ((Own.Find("sill")?.Value as TreeTable)?.Find(name)?.Value ?? Own).Place,
            message,
            remedy,
            right is { } r ? Cure.Set(Invariant($"{At}.sill.{name}"), r) : null);
    }
}
