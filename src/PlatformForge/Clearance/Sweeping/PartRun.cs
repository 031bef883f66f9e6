using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Admissible;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>One part of a vehicle in all poses of one way round, with what a survey leaves uncertain of them.</summary>
/// <param name="chart">The chart.</param>
/// <param name="vehicle">The vehicle.</param>
/// <param name="part">Its part.</param>
/// <param name="outline">The part's outline.</param>
/// <param name="poses">The poses, in order along the track.</param>
internal sealed class PartRun(Centreline chart, Vehicle vehicle, VehiclePart part, PartOutline outline, IReadOnlyList<StandingPose> poses)
{
    public Vehicle Vehicle => vehicle;

    public VehiclePart Part => part;

    public IReadOnlyList<StandingPose> Poses => poses;

    /// <summary>The ranges of <see cref="Measures"/>.</summary>
    public ReadOnlyMemory<LineRange> Ranges { get; set; }

    /// <summary>What lies unseen between two poses, mm.</summary>
    public double Bow { get; set; }

    /// <summary>Measures of the places at the outline's ends: all poses for one place, then for the next, so that neighbours are alike.</summary>
    public IEnumerable<LineMeasure> Measures() => outline.Ends.SelectMany(x => poses.Select(p => p.Measure(part.Carrier, x)));

    /// <summary>Raises the stations that the part reaches.</summary>
    public void AddTo(DoubtSheet sheet)
    {
        var ranges = Ranges.Span;
        Span<LineRange> ends = stackalloc LineRange[outline.Ends.Length];
        foreach (var (x, left, right) in outline.Places)
        {
            DoubtTrace? last = null;
            for (int k = 0; k < poses.Count; k++)
            {
                for (int e = 0; e < ends.Length; e++)
                {
                    ends[e] = ranges[(e * poses.Count) + k];
                }

                var own = outline.Between(ends, x);
                var next = poses[k].Place(chart, part.Carrier, x, left, right, new(own.Least - Bow, own.Most + Bow));
                sheet.Add(last, next);
                last = next;
            }
        }
    }
}
