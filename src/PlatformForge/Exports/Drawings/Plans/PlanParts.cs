using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>What a plan shows, group by group, from the ground up.</summary>
internal sealed class PlanParts(Dossier dossier, PlatformDossier platform, double beyond)
{
    private const double FacetLength = 4;
    private const double SleeperPitch = 760, SleeperLength = 2590; // full size, mm, from memory; for looks only
    private const double UnderEnds = 20; // mm of track drawn past a vehicle's ends
    private const double ChainageTick = 20, ChainageLabel = 100;

    // Where along a vehicle its name may stand, shares of half its length.
    private static readonly double[] AlongBody = [0, 0.3, -0.3, 0.5, -0.5];

    // Shares of the waist's width at which its figure may stand.
    private static readonly double[] AcrossWaist = [0.5, 0.62, 0.38];

    // mm on the sheet between two lines of a coping.
    private const double LeastPitch = 0.5;

    internal static readonly Pen ElementJoint = new(0.3, HouseStyle.Accent);

    internal static readonly Pen Pocket = HouseStyle.Hidden with { Colour = HouseStyle.Accent };

    private readonly PlatformPlan plan = platform.Plan;

    // Vehicles that stand beyond the platform's ends have track under them.
    private readonly double[] standing = [.. platform.Poses.SelectMany(Whole).SelectMany(VehicleShape.Extent)
        .Select(p => platform.Plan.Chart.Locate(p).Chainage)];

    private double From => Math.Max(0, standing.Select(s => s - UnderEnds).Append(plan.Spec.Face.From - beyond).Min());

    private double To => Math.Min(plan.Chart.Length, standing.Select(s => s + UnderEnds).Append(plan.Spec.Face.To + beyond).Max());

    private int Away => (int)plan.Side.Outward(1);

    /// <summary>Points that must fall on the paper.</summary>
    public IEnumerable<Point2> Extent()
    {
        double half = SleeperLength / dossier.Scale.Ratio / 2;
        return Stations(From, To).SelectMany(s => new[] { plan.Chart.PointAt(s, half), plan.Chart.PointAt(s, -half) })
            .Concat(plan.Outer is var outer ? plan.Stations.Select(s => plan.ToLayout(s, outer.At(s))) : [])
            .Concat(plan.Bank?.Returns.SelectMany(r => r.Toe) ?? [])
            .Concat(SweptLine(Side.Left)).Concat(SweptLine(Side.Right))
            .Concat(platform.Poses.SelectMany(Whole).SelectMany(VehicleShape.Extent))
            .Concat(new PlanNeighbours(dossier, plan, From, To).Extent());
    }

    public void DrawOn(Sheet sheet, PlanView view)
    {
        var labels = new Labels(sheet);
        var neighbours = new PlanNeighbours(dossier, plan, From, To);
        new PlanLegend(dossier, platform, neighbours.Any).DrawOn(sheet, labels);
        PlanScaleBar.DrawOn(sheet, view, labels);
        Swept(sheet, view);
        var window = new DrawingWindow(TitleBlock.Margin, TitleBlock.Margin + PlanDrawing.Above, sheet.Width - TitleBlock.Margin,
            sheet.Height - TitleBlock.Margin - TitleBlock.Depth - PlanDrawing.Below);
        neighbours.DrawOn(sheet, view, window);
        TrackLines(sheet, view);
        Body(sheet, view);
        var marks = new PlanMarks(plan, platform.Sections.Cuts);
        marks.DrawOn(sheet, view);
        Vehicles(sheet, view, labels);
        Sections(sheet, view, labels, [.. neighbours.Rails(view, window)]);
        marks.Name(sheet, view, labels);
        Ramps(view, labels);
        Chainages(sheet, view, labels);
        Elements(sheet, view, labels);
        neighbours.Name(view, labels, window);
    }

    private static IEnumerable<double> Stations(double from, double to)
    {
        int facets = Math.Max(1, (int)Math.Ceiling((to - from) / FacetLength));
        return Enumerable.Range(0, facets + 1).Select(i => from + ((to - from) * i / facets));
    }

    private IEnumerable<Point2> SweptLine(Side side)
    {
        var line = platform.Envelope.Composite(side);
        return Enumerable.Range(0, line.Count).Where(i => i % 4 == 0 || i == line.Count - 1).Where(i => double.IsFinite(line.Reach[i]))
            .Select(i => plan.Chart.PointAt(line.ChainageOf(i), side.Outward(line.Reach[i])));
    }

    private void Swept(Sheet sheet, PlanView view)
    {
        var left = SweptLine(Side.Left).Select(view.Of).ToArray();
        var right = SweptLine(Side.Right).Select(view.Of).ToArray();
        sheet.Area(left.Concat(right.Reverse()), new(HouseStyle.Swept, 0.1));
        sheet.Lines(left, new(0.2, HouseStyle.Swept, 2, 0.8));
        sheet.Lines(right, new(0.2, HouseStyle.Swept, 2, 0.8));
    }

    private void TrackLines(Sheet sheet, PlanView view)
    {
        double half = SleeperLength / dossier.Scale.Ratio / 2, pitch = SleeperPitch / dossier.Scale.Ratio;
        for (double s = From + (pitch / 2); s < To; s += pitch)
        {
            sheet.Line(view.Of(plan.Chart.PointAt(s, half)), view.Of(plan.Chart.PointAt(s, -half)), new(0.3, HouseStyle.Hair));
        }

        var stations = Stations(From, To).ToArray();
        foreach (double rail in (double[])[dossier.Gauge / 2, -dossier.Gauge / 2])
        {
            sheet.Lines(stations.Select(s => view.Of(plan.Chart.PointAt(s, rail))), new(0.3, HouseStyle.Ink));
        }

        sheet.Lines(stations.Select(s => view.Of(plan.Chart.PointAt(s))), HouseStyle.Centre);
    }

    private IEnumerable<Point2> Line(PlanView view, PlanLine line, double from, double to) =>
        plan.Stations.Where(s => s > from && s < to).Prepend(from).Append(to).Select(s => view.Of(plan.ToLayout(s, line.At(s))));

    private void Strip(Sheet sheet, PlanView view, PlanLine near, PlanLine far, double from, double to, Fill? fill, Pen? pen) =>
        sheet.Area(Line(view, near, from, to).Concat(Line(view, far, from, to).Reverse()), fill, pen);

    private void Paving(Sheet sheet, PlanView view)
    {
        foreach (var joint in PavingLines.Of(plan))
        {
            sheet.Lines(joint.Select(p => view.Of(plan.ToLayout(p.Chainage, p.Reach))), HouseStyle.Hairline);
        }
    }

    // Joints of a coping's bricks and its tooled margins, where they can be told from one another.
    private void Coping(Sheet sheet, PlanView view)
    {
        var coping = plan.Spec.Coping;
        double pitch = coping.Kind == CopingKind.Bricks ? coping.BrickPitch : coping.Margin;
        foreach (var line in pitch < LeastPitch * view.Reduction ? [] : plan.Faces.SelectMany(f => CopingLines.Of(f, coping)))
        {
            sheet.Lines(line.Select(view.Of), HouseStyle.Hairline);
        }
    }

    private void Body(Sheet sheet, PlanView view)
    {
        var (from, to) = (plan.Spec.Face.From, plan.Spec.Face.To);
        BankHachures.DrawOn(sheet, view, plan);
        Strip(sheet, view, plan.CopingFront, plan.Back, from, to, new(HouseStyle.Deck), null);
        foreach (var coping in plan.Body.Top.Where(s => s.Role == StripRole.Coping))
        {
            Strip(sheet, view, coping.Near, coping.Far, from, to, new(HouseStyle.Coping), null);
        }

        CopingReturnView.DrawOn(sheet, view, plan);
        foreach (var (face, joint) in plan.Faces.SelectMany(f => f.CopingJoints.Select(j => (f, j))))
        {
            sheet.Line(view.Of(face.ToLayout(joint, face.CopingFront.At(joint))),
                view.Of(face.ToLayout(joint, face.CopingBack.At(joint))), new(0.1, HouseStyle.Quiet));
        }

        Coping(sheet, view);
        Paving(sheet, view);
        Below(sheet, view);
        foreach (var line in plan.Body.Lines)
        {
            Strip(sheet, view, line.Near, line.Far, line.From, line.To, new(LineLooks.Of(line.Made, plan.Spec)), new(0.08, HouseStyle.Quiet));
        }

        sheet.Lines(Line(view, plan.CopingBack, from, to), HouseStyle.Thin);
        if (plan.Body.FarCopingBack is { } far)
        {
            sheet.Lines(Line(view, far, from, to), HouseStyle.Thin);
            Waist(sheet, view);
        }

        Strip(sheet, view, plan.CopingFront, plan.Back, from, to, null, HouseStyle.Heavy);
        Heads(sheet, view);
    }

    // What stands under the deck: walls, bents, what is in and before walls, pockets.
    private void Below(Sheet sheet, PlanView view)
    {
        foreach (var hidden in plan.Body.Standing.SelectMany(s => new[] { s.Near, s.Far }).Where(l => l != plan.Back))
        {
            sheet.Lines(Line(view, hidden, plan.Spec.Face.From, plan.Spec.Face.To), HouseStyle.Hidden);
        }

        var fitted = FittingView.Of(platform.Sections.Plan).Select(p => (p.Near, p.Far, p.From, p.To, (Fill?)null));
        foreach (var (inner, outer, a, b, fill) in BentView.Below(plan).Concat(fitted))
        {
            Strip(sheet, view, inner, outer, a, b, fill, HouseStyle.Hidden with { Width = 0.1 });
        }

        foreach (var pocket in platform.Sections.Sections.SelectMany(s => s.Pockets))
        {
            sheet.Area(pocket.Select(view.Of), null, Pocket);
        }
    }

    // Heads of ramps where no cut shows them.
    private void Heads(Sheet sheet, PlanView view)
    {
        foreach (double head in (double[])[plan.Profile.StartHead, plan.Profile.EndHead])
        {
            if (head > plan.Spec.Face.From && head < plan.Spec.Face.To && !platform.Sections.Cuts.Any(c => Math.Abs(c - head) < 1))
            {
                sheet.Line(view.Of(plan.ToLayout(head, plan.CopingFront.At(head))), view.Of(plan.ToLayout(head, plan.Back.At(head))), HouseStyle.Thin);
            }
        }
    }

    // The narrowest place of an island, from edge to edge.
    private void Waist(Sheet sheet, PlanView view)
    {
        if (plan.Waist is { } waist)
        {
            var (near, far) = (plan.Faces[0], plan.Faces[1]);
            sheet.Line(view.Of(near.ToLayout(waist.First, near.CopingFront.At(waist.First))),
                view.Of(far.ToLayout(waist.Second, far.CopingFront.At(waist.Second))), HouseStyle.Fine with { Colour = HouseStyle.Accent });
        }
    }

    private void Vehicles(Sheet sheet, PlanView view, Labels labels)
    {
        var looks = new VehicleLooks(platform);
        Rgb Colour(VehicleOutlinePose pose, VehicleOutlinePose body) => looks.Of(body.Vehicle.Name, pose.OtherTrack).Colour;
        foreach (var pose in platform.Poses)
        {
            foreach (var part in pose.Coupled.SelectMany(body => body.Parts.Select(part => (part.Ring, Colour: Colour(pose, body)))))
            {
                sheet.Area(part.Ring.Select(view.Of), new(part.Colour, 0.05), new(0.2, part.Colour, 2, 0.8));
            }

            VehicleShape.Draw(sheet, pose, view.Of, Colour(pose, pose), dossier.Gauge);
        }

        // Names after all shapes, so that none is drawn over, and rather where no other vehicle lies.
        foreach (var (pose, body) in platform.Poses.SelectMany(pose => Whole(pose).Select(body => (pose, body))))
        {
            double angle = view.AngleOf(body.Pose.Body.Forward), half = body.Vehicle.Length / 2;
            angle = angle is > 90 or < -90 ? angle - (Math.Sign(angle) * 180) : angle;
            var others = platform.Poses.SelectMany(Whole).Where(o => !ReferenceEquals(o, body)).SelectMany(o => o.Parts).Select(p => p.Ring).ToArray();
            var places = AlongBody.Select(share => body.Pose.Body.Apply(new(share * half, 0)))
                .OrderBy(p => others.Count(ring => ConvexRing.Contains(ring, p)))
                .Select(p => (view.Of(p) + new Point2(0, 0.8), TextAnchor.Middle, angle));
            string words = RequirementTrace.Called(body.Vehicle.Name, pose.OtherTrack);
            labels.PutOver(words, HouseStyle.Small with { Colour = VehicleLooks.ForWords(Colour(pose, body)), Bold = ReferenceEquals(body, pose) },
                new(HouseStyle.Paper, 0.85), places);
        }
    }

    // A vehicle and the bodies coupled to it.
    private static IEnumerable<VehicleOutlinePose> Whole(VehicleOutlinePose pose) => pose.Coupled.Prepend(pose);

    private void Sections(Sheet sheet, PlanView view, Labels labels, IReadOnlyList<Point2> rails)
    {
        const double Radius = 3.1;
        foreach (double cut in platform.Sections.Cuts)
        {
            Point2 near = view.Of(plan.ToLayout(cut, plan.CopingFront.At(cut))), far = view.Of(plan.ToLayout(cut, plan.Back.At(cut)));
            var along = (far - near) * (1 / (far - near).Length);
            sheet.Line(near - (along * 1.5), far + (along * 4.5), HouseStyle.Cut);
        }

        foreach (var section in platform.Sections.Sections)
        {
            var middle = BadgePlace(view, section, rails);
            sheet.Circle(middle, Radius, new(HouseStyle.Accent));
            sheet.Text(Invariant($"{section.Number}"), middle + new Point2(0, 1.15), HouseStyle.Strong with { Size = 3.2, Colour = HouseStyle.White },
                TextAnchor.Middle);
            labels.Keep(middle.X - Radius, middle.Y - Radius, middle.X + Radius, middle.Y + Radius);
            labels.PutOver(Invariant($"{Figures.Mm(section.Length)} long"), HouseStyle.Small, new(HouseStyle.Paper, 0.85),
                (middle + new Point2(Radius + 1.2, 0.8), TextAnchor.Start, 0));
        }
    }

    // Behind the platform, where no rail of another track runs; else on the deck, before its back edge and any coping there.
    private Point2 BadgePlace(PlanView view, PlatformSection section, IReadOnlyList<Point2> rails)
    {
        const double StandOff = 7, Clear = 5;
        double within = (plan.Spec.IsIsland ? plan.Spec.Coping.Width / view.Reduction : 0) + Clear;
        (double S, Point2 At) Place(double share, double off)
        {
            double s = section.From + (share * (section.To - section.From));
            Point2 near = view.Of(plan.ToLayout(s, plan.CopingFront.At(s))), far = view.Of(plan.ToLayout(s, plan.Back.At(s)));
            return (s, far + ((far - near) * (off / (far - near).Length)));
        }

        double[] shares = [0.5, 0.35, 0.65, 0.2, 0.8];
        var places = shares.SelectMany(share => new[] { Place(share, StandOff), Place(share, StandOff + 5) }).Select(p => p.At).ToArray();
        return Array.Find(places, p => rails.All(r => (r - p).Length > Clear)) is { } free && free != default ? free : Place(0.5, -within).At;
    }

    private void Ramps(PlanView view, Labels labels)
    {
        var p = plan.Profile;
        foreach (var (foot, head, low) in new[] { (p.From, p.StartHead, p.StartFoot), (p.To, p.EndHead, p.EndFoot) })
        {
            if (foot == head)
            {
                continue;
            }

            double s = (foot + head) / 2, angle = view.AngleOf(plan.Chart.At(s).Tangent);
            labels.PutOver(Invariant($"ramp {Figures.Short(Math.Round(Math.Abs(head - foot), 1))}, {Figures.Gradient(p.Level - low, Math.Abs(head - foot))}"),
                HouseStyle.Label, new(HouseStyle.Deck), (OnDeck(view, s), TextAnchor.Middle, angle));
        }

        double mid = (p.StartHead + p.EndHead) / 2;
        string fall = plan.Spec.Deck.Crossfall > 0 ? Invariant($", falling 1 in {Figures.Short(plan.Spec.Deck.Crossfall)} to the back") : "";
        if (plan.Waist is { } waist)
        {
            labels.PutOver(Invariant($"waist {Figures.Short(Math.Round(waist.Width, 1))}"),
                HouseStyle.Label with { Colour = HouseStyle.Accent }, new(HouseStyle.Deck),
                AcrossWaist.Select(share => (view.Of(plan.ToLayout(waist.First, plan.CopingFront.At(waist.First)
                    + (share * (plan.Back.At(waist.First) - plan.CopingFront.At(waist.First))))),
                    TextAnchor.Start, view.AngleOf(plan.Chart.At(waist.First).Tangent))));
            return;
        }

        labels.PutOver(Invariant($"deck {Figures.Short(Math.Round(plan.Spec.Deck.Width, 2))} wide{fall}"), HouseStyle.Label, new(HouseStyle.Deck),
            from back in (double[])[0.28, 0.42, 0.56]
            from s in platform.Sections.Sections.Select(q => (q.From + q.To) / 2).OrderBy(s => Math.Abs(s - mid))
            select (OnDeck(view, s, back), TextAnchor.Middle, view.AngleOf(plan.Chart.At(s).Tangent)));
    }

    /// <summary>A place on the deck a quarter of the way back from the coping, or from what is laid into the deck behind that, where few lines run.</summary>
    private Point2 OnDeck(PlanView view, double s, double back = 0.28)
    {
        double near = plan.First.Lines.Where(l => s > l.From && s < l.To).Select(l => l.Far.At(s)).Append(plan.CopingBack.At(s)).Max();
        return view.Of(plan.ToLayout(s, ((1 - back) * near) + (back * plan.BackWallFace.At(s)))) + new Point2(0, 0.9);
    }

    private void Chainages(Sheet sheet, PlanView view, Labels labels)
    {
        var line = platform.Envelope.Composite(plan.Side.Opposite());
        double Clear(double s) => Math.Max(SleeperLength / dossier.Scale.Ratio / 2, line.At(s) is var r && double.IsFinite(r) ? r : 0);
        for (double s = Math.Ceiling(From / ChainageTick) * ChainageTick; s <= To; s += ChainageTick)
        {
            bool major = Math.Abs(Math.IEEERemainder(s, ChainageLabel)) < Tolerances.SameLength;
            double d = Clear(s) + (1.5 * view.Reduction);
            Point2 a = view.Of(plan.Chart.PointAt(s, -Away * d)), b = view.Of(plan.Chart.PointAt(s, -Away * (d + ((major ? 2.4 : 1.2) * view.Reduction))));
            sheet.Line(a, b, major ? HouseStyle.Thin : HouseStyle.Fine);
            if (major)
            {
                var out_ = (b - a) * (1 / (b - a).Length);
                double drop = out_.Y > 0 ? HouseStyle.Small.Size * 0.8 : 0;
                labels.PutOver(Invariant($"{s:F0}"), HouseStyle.Small, new(HouseStyle.Paper, 0.85),
                    (b + (out_ * 0.8) + new Point2(0, drop), TextAnchor.Middle, 0));
            }
        }
    }

    private void Elements(Sheet sheet, PlanView view, Labels labels)
    {
        double reach = (SleeperLength / dossier.Scale.Ratio / 2) + (15 * view.Reduction);
        for (int i = 0; i < plan.Chart.Elements.Count; i++)
        {
            double from = Math.Max(From, plan.Chart.StartOf(i)), to = Math.Min(To, plan.Chart.StartOf(i) + plan.Chart.Elements[i].Length);
            if (to - from < 1)
            {
                continue;
            }

            if (plan.Chart.StartOf(i) > From)
            {
                double half = 3.2 * view.Reduction;
                Point2 a = view.Of(plan.Chart.PointAt(from, half)), b = view.Of(plan.Chart.PointAt(from, -half));
                sheet.Line(a, b, ElementJoint);
                foreach (var end in (Point2[])[a, b])
                {
                    sheet.Circle(end, 0.5, new(HouseStyle.Accent));
                }
            }

            // Beside the middle of what shows of the element, or a little along, or farther out.
            double[] shares = [0.5, 0.4, 0.6, 0.3, 0.7];
            labels.Put(Say(plan.Chart.Elements[i]), HouseStyle.Small with { Colour = HouseStyle.Ink }, new double[] { 1, 1.12,
                1.25 }.SelectMany(out_ => shares.Select(share =>
            {
                double s = from + (share * (to - from));
                return (view.Of(plan.Chart.PointAt(s, -Away * reach * out_)), TextAnchor.Middle, view.AngleOf(plan.Chart.At(s).Tangent));
            })));
        }
    }

    internal static string Say(CentrelineElement element)
    {
        string Radius(double curvature) => Invariant($"R {Figures.Short(Math.Round(Math.Abs(1 / curvature), 1))} {(curvature > 0 ? "left" : "right")}");
        double start = StraightRule.Told(element.StartCurvature), end = StraightRule.Told(element.EndCurvature);
        return start == 0 && end == 0 ? "straight"
            : start == end ? Radius(start)
            : Invariant($"transition {Figures.Short(Math.Round(element.Length, 1))}") + (end == 0 ? " to straight" : " to " + Radius(end));
    }
}
