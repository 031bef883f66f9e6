using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>One vehicle in its tightest place, and that place enlarged.</summary>
internal sealed class TightPanel
{
    private const double Words = 11; // mm of paper for the two lines over the picture
    private const double Lens = 40; // side of the enlarged square, mm of paper
    private const double LeastHeight = Lens + Words + 2;
    private const double Around = 14; // mm of track shown beyond the vehicle's ends
    private const double Deck = 7; // mm of deck shown behind the coping
    private const double FacetLength = 4;
    private static readonly double[] Enlargements = [20, 15, 12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1, 0.75, 0.5, 0.25];

    private readonly Dossier dossier;
    private readonly PlatformDossier platform;
    private readonly PlatformPlan plan;
    private readonly TightPlace place;
    private readonly double width;
    private readonly double from;
    private readonly double to;
    private readonly PlanView shape;

    public TightPanel(Dossier dossier, PlatformDossier platform, TightPlace place, double width)
    {
        (this.dossier, this.platform, plan, this.place, this.width) = (dossier, platform, platform.Plan, place, width);
        double[] along = [.. VehicleShape.Extent(place.Pose).Select(p => plan.Chart.Locate(p, place.Chainage).Chainage)];
        (from, to) = (Math.Max(0, along.Min() - Around), Math.Min(plan.Chart.Length, along.Max() + Around));
        shape = View(0, 0);
        Height = Math.Max(LeastHeight, Words + shape.Height + 4);
    }

    /// <summary>Height on paper, mm.</summary>
    public double Height { get; }

    private (Rgb Colour, Pattern Pattern) Look => new VehicleLooks(platform).Of(place.Pose.Vehicle.Name, place.Pose.OtherTrack);

    public void DrawOn(Sheet sheet, double left, double top)
    {
        var view = View(left, top + Words + ((Height - Words - 4 - shape.Height) / 2));
        sheet.Text(place.Called, new(left, top + 3), HouseStyle.Subheading with { Colour = VehicleLooks.ForWords(Look.Colour) });
        sheet.Text(Invariant($"{place.Part} at chainage {Figures.Fixed(place.Chainage, 0)}: {Figures.Fine(place.Left)} to the ")
            + Invariant($"coping, {Figures.Fine(place.Left - platform.Budget.Margin)} beyond the budget; scale {view.Scale}"),
            new(left, top + 7.4), HouseStyle.Label);
        Ground(sheet, view);
        VehicleShape.Draw(sheet, place.Pose, view.Of, Look.Colour, dossier.Gauge);
        Swept(sheet, view);
        var tight = view.Of(plan.ToLayout(place.Chainage, place.Reach + (place.Left / 2)));
        double ring = Math.Max(2.2, place.Left / view.Reduction);
        sheet.Circle(tight, ring, null, new(0.35, HouseStyle.Accent));
        Point2 corner = new(left + width - Lens, top + Words + ((Height - Words - Lens) / 2));
        Enlarged(sheet, corner);
    }

    private PlanView View(double left, double top)
    {
        double room = width - Lens - 5;
        var points = Stations(from, to).SelectMany(s => new[] { plan.Chart.PointAt(s, dossier.Gauge * 0.8), plan.Chart.PointAt(s, -dossier.Gauge * 0.8) })
            .Concat(VehicleShape.Extent(place.Pose))
            .Concat(Beside().SelectMany(s => new[] { plan.ToLayout(s, plan.CopingFront.At(s)), plan.ToLayout(s, Depth(s)) })).ToArray();
        return PlanView.Of(points, plan.Chart.PointAt(to) - plan.Chart.PointAt(from), left, top, room);
    }

    private double Depth(double s) => Math.Min(plan.Back.At(s), plan.CopingBack.At(s) + Deck);

    private static IEnumerable<double> Stations(double from, double to)
    {
        int facets = Math.Max(1, (int)Math.Ceiling((to - from) / FacetLength));
        return Enumerable.Range(0, facets + 1).Select(i => from + ((to - from) * i / facets));
    }

    /// <summary>Stations of the platform that the panel shows.</summary>
    private double[] Beside()
    {
        double a = Math.Max(from, plan.Spec.Face.From), b = Math.Min(to, plan.Spec.Face.To);
        return b > a ? [.. plan.Stations.Where(s => s > a && s < b).Prepend(a).Append(b)] : [];
    }

    private void Ground(Sheet sheet, PlanView view)
    {
        double[] stations = [.. Stations(from, to)], beside = Beside();
        foreach (double rail in (double[])[dossier.Gauge / 2, -dossier.Gauge / 2])
        {
            sheet.Lines(stations.Select(s => view.Of(plan.Chart.PointAt(s, rail))), new(0.3, HouseStyle.Quiet));
        }

        sheet.Lines(stations.Select(s => view.Of(plan.Chart.PointAt(s))), HouseStyle.Centre);
        Beneath(sheet, view);
        IEnumerable<Point2> Line(Func<double, double> reach) => beside.Select(s => view.Of(plan.ToLayout(s, reach(s))));
        sheet.Area(Line(plan.CopingFront.At).Concat(Line(Depth).Reverse()), new(HouseStyle.Deck));
        sheet.Area(Line(plan.CopingFront.At).Concat(Line(plan.CopingBack.At).Reverse()), new(HouseStyle.Coping), HouseStyle.Thin);
        sheet.Lines(Line(plan.CopingFront.At), HouseStyle.Heavy);
    }

    // The other track that a vehicle stands on, where it does.
    private void Beneath(Sheet sheet, PlanView view)
    {
        if (dossier.Tracks.FirstOrDefault(t => place.Pose.OtherTrack.Length > 0 && t.Ride.Name == place.Pose.OtherTrack) is { Ride: var ride })
        {
            double[] along = [.. VehicleShape.Extent(place.Pose).Select(p => ride.Locate(p, place.Pose.Pose.LeadingChainage).Chainage)];
            double[] stations = [.. Stations(Math.Max(0, along.Min() - Around), Math.Min(ride.Length, along.Max() + Around))];
            foreach (double rail in (double[])[dossier.Gauge / 2, -dossier.Gauge / 2])
            {
                sheet.Lines(stations.Select(s => view.Of(ride.PointAt(s, rail))), new(0.3, Look.Colour));
            }
        }
    }

    /// <summary>The farthest that the vehicle ever reaches, towards the platform.</summary>
    private Point2[] Reached()
    {
        var envelope = platform.Envelope;
        var own = envelope.Parts.Where(p => plan.Requirement.IndexOf(p) == plan.Requirement.IndexOf(place.Pose.Vehicle.Name, place.Pose.OtherTrack))
            .Select(p => p.Towards(plan.Side)).ToArray();
        return [.. Enumerable.Range(0, envelope.Count).Select(i => (S: envelope.From + (i * envelope.Spacing), Reach: own.Max(r => r[i])))
            .Where(p => p.S >= from && p.S <= to && double.IsFinite(p.Reach) && (place.Pose.OtherTrack.Length == 0 || p.Reach < plan.CopingFront.At(p.S)))
            .Select(p => plan.ToLayout(p.S, p.Reach))];
    }

    private void Swept(Sheet sheet, PlanView view) => sheet.Lines(Reached().Select(view.Of), new(0.2, Look.Colour, 2, 0.8));

    /// <summary>The tight place in a square of its own, track to one side and platform to the other.</summary>
    private void Enlarged(Sheet sheet, Point2 corner)
    {
        double wanted = place.Left + plan.Spec.Coping.Width, scale = Array.Find(Enlargements, e => wanted * e <= Lens * 0.62);
        scale = scale > 0 ? scale : Enlargements[^1];
        var along = plan.Chart.At(place.Chainage).Tangent;
        Point2 middle = plan.ToLayout(place.Chainage, place.Reach + (place.Left / 2) + (plan.Spec.Coping.Width / 3));
        double x0 = corner.X, x1 = corner.X + Lens, y0 = corner.Y, y1 = corner.Y + Lens;
        Point2 Of(Point2 p)
        {
            var d = p - middle;
            return new(((x0 + x1) / 2) + (Point2.Dot(d, along) * scale), ((y0 + y1) / 2) - (Point2.Cross(along, d) * scale));
        }

        void Shown(IEnumerable<Point2> ring, Fill? fill, Pen? pen)
        {
            var kept = EdgeDetail.Clip([.. ring.Select(Of)], x0, x1, y0, y1);
            if (kept.Count > 2)
            {
                sheet.Area(kept, fill, pen);
            }
        }

        sheet.Box(x0, y0, Lens, Lens, new(HouseStyle.White));
        double span = Lens / scale;
        double[] near = [.. plan.Stations.Where(s => Math.Abs(s - place.Chainage) < span).Append(place.Chainage)
            .Append(Math.Max(plan.Spec.Face.From, place.Chainage - span)).Append(Math.Min(plan.Spec.Face.To, place.Chainage + span)).Order()];
        IEnumerable<Point2> Line(PlanLine line) => near.Select(s => plan.ToLayout(s, line.At(s)));
        Shown(Line(plan.CopingFront).Concat(Line(plan.Back).Reverse()), new(HouseStyle.Deck), null);
        Shown(Line(plan.CopingFront).Concat(Line(plan.CopingBack).Reverse()), new(HouseStyle.Coping), HouseStyle.Outline);
        foreach (var part in place.Pose.Parts)
        {
            Shown(part.Ring, new(Look.Colour, 0.16), new(0.4, Look.Colour));
        }

        var reached = Reached().Select(Of).Where(p => p.X >= x0 && p.X <= x1 && p.Y >= y0 && p.Y <= y1).ToArray();
        sheet.Lines(reached.Length > 1 ? reached : [Of(plan.ToLayout(place.Chainage, place.Reach)), Of(plan.ToLayout(place.Chainage, place.Reach))],
            new(0.25, Look.Colour, 2, 0.8));
        sheet.Box(x0, y0, Lens, Lens, null, new(0.35, HouseStyle.Accent));
        Labels(sheet, corner, scale, Of(plan.ToLayout(place.Chainage, place.Reach)), Of(plan.ToLayout(place.Chainage, place.Reach + place.Left)));
    }

    // What is left, between two points of the sheet, and how much larger than the model the square is.
    private void Labels(Sheet sheet, Point2 corner, double scale, Point2 reach, Point2 edge)
    {
        double x0 = corner.X, x1 = corner.X + Lens, y0 = corner.Y;
        Dimensions.Between(sheet, reach, edge, 0, "");
        string left = Figures.Fine(place.Left);
        sheet.Box(x0 + 0.8, y0 + 0.8, TextStyle.Length(left, HouseStyle.Subheading) + 2, 4.8, new(HouseStyle.Paper, 0.9));
        sheet.Text(left, new(x0 + 1.8, y0 + 4.4), HouseStyle.Subheading);
        string enlarged = Invariant($"{Figures.Short(scale)}:1");
        double room = TextStyle.Length(enlarged, HouseStyle.Small);
        sheet.Box(x1 - 2.3 - room, y0 + 1.2, room + 1.6, 3, new(HouseStyle.Paper, 0.9));
        sheet.Text(enlarged, new(x1 - 1.5, y0 + 3.4), HouseStyle.Small, TextAnchor.End);
    }
}
