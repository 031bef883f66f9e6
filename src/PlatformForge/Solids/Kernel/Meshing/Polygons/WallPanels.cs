using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Levels;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>
/// Makes panels of strips of wall: strips that follow one another along a straight line, of one height where they meet and with nothing
/// else at that joint, are one panel. Strips are first parted at the levels where others end beside them, so that bands run through.
/// </summary>
internal sealed class WallPanels
{
    private readonly PlanFaces faces;
    private readonly NodeLevels levels;
    private readonly LevelCreases creases;
    private readonly GrowingArray<WallStrip> strips;
    private readonly bool[] ends;
    private readonly int[] next;
    private readonly bool[] follows;
    private readonly Dictionary<(int Strip, bool Far), int> folds = [];
    private readonly Func<int, int, bool>? oneFace;

    /// <param name="faces">The plan.</param>
    /// <param name="levels">Its levels.</param>
    /// <param name="creases">Takes the levels that ends of panels need.</param>
    /// <param name="whole">All strips of wall.</param>
    /// <param name="oneFace">Says of two named faces whether they are one round a bend; null where nobody asks what goes on round bends.</param>
    public WallPanels(PlanFaces faces, NodeLevels levels, LevelCreases creases, ReadOnlySpan<WallStrip> whole, Func<int, int, bool>? oneFace = null)
    {
        (this.faces, this.levels, this.creases, this.oneFace) = (faces, levels, creases, oneFace);
        strips = new(2 * whole.Length);
        ends = Lent<bool>.Rent(levels.Count + 1);
        ends.AsSpan(0, levels.Count + 1).Clear();
        foreach (ref readonly var s in whole)
        {
            ends[s.NearLow] = ends[s.NearHigh] = ends[s.FarLow] = ends[s.FarHigh] = true;
        }

        foreach (ref readonly var s in whole)
        {
            Part(s);
        }

        next = Lent<int>.Rent(strips.Count);
        follows = Lent<bool>.Rent(strips.Count);
        next.AsSpan(0, strips.Count).Fill(-1);
        follows.AsSpan(0, strips.Count).Clear();
        Link();
        for (int s = 0; s < strips.Count; s++)
        {
            NeedEnds(s);
        }
    }

    public ReadOnlySpan<WallStrip> Strips => strips.Span;

    /// <summary>Whether a strip begins a panel.</summary>
    public bool Begins(int strip) => !follows[strip];

    /// <summary>The strip that goes on with a panel, or −1.</summary>
    public int Next(int strip) => next[strip];

    /// <summary>Whether a strip that begins a panel is all of it, and has its four corners and no others.</summary>
    public bool IsPlain(int strip)
    {
        ref var s = ref strips[strip];
        return next[strip] < 0 && After(s.NearLow) == s.NearHigh && After(s.FarLow) == s.FarHigh;
    }

    /// <summary>The next level over another one at the same node at which a strip ends; at the greatest the number of levels.</summary>
    public int After(int level)
    {
        do
        {
            level++;
        }
        while (level < levels.Count && !ends[level]);
        return level;
    }

    /// <summary>The strip of the same named face that goes on round a bend at one of a strip's ends, or −1.</summary>
    public int Beyond(int strip, bool far) => folds.TryGetValue((strip, far), out int other) ? other : -1;

    public void GiveBack()
    {
        strips.GiveBack();
        Lent<bool>.GiveBack(ends);
        Lent<int>.GiveBack(next);
        Lent<bool>.GiveBack(follows);
    }

    /// <summary>Parts a strip along lines between levels at both of its ends at which other strips end: all of them in order, or those of one height.</summary>
    private void Part(in WallStrip strip)
    {
        int near = After(strip.NearLow), far = After(strip.FarLow);
        if (near >= strip.NearHigh || far >= strip.FarHigh)
        {
            strips.Add(strip);
            return;
        }

        bool all = Between(strip.NearLow, strip.NearHigh) == Between(strip.FarLow, strip.FarHigh);
        int lowNear = strip.NearLow, lowFar = strip.FarLow;
        while (near < strip.NearHigh && far < strip.FarHigh)
        {
            double rise = levels.Height(far) - levels.Height(near);
            if (all || Math.Abs(rise) <= KernelLimits.SameLevel)
            {
                strips.Add(strip with { NearLow = lowNear, FarLow = lowFar, NearHigh = near, FarHigh = far });
                creases.Need(near);
                creases.Need(far);
                (lowNear, lowFar) = (near, far);
                (near, far) = (After(near), After(far));
            }
            else if (rise > 0)
            {
                near = After(near);
            }
            else
            {
                far = After(far);
            }
        }

        strips.Add(strip with { NearLow = lowNear, FarLow = lowFar });
    }

    private int Between(int low, int high)
    {
        int count = 0;
        for (int level = After(low); level < high; level = After(level))
        {
            count++;
        }

        return count;
    }

    /// <summary>Joins strips over the upright joints at which just these two meet.</summary>
    private void Link()
    {
        int[] meeting = Lent<int>.Rent(levels.Count + 1), first = Lent<int>.Rent(levels.Count + 1);
        meeting.AsSpan(0, levels.Count + 1).Clear();
        for (int s = 0; s < strips.Count; s++)
        {
            ref var strip = ref strips[s];
            Enter(strip.NearLow, strip.NearHigh, s, meeting, first);
            Enter(strip.FarLow, strip.FarHigh, ~s, meeting, first);
        }

        for (int s = 0; s < strips.Count; s++)
        {
            ref var strip = ref strips[s];
            int low = strip.FarLow, other = meeting[low] == 2 && After(low) == strip.FarHigh ? first[low] ^ ~s : -1;
            if (other >= 0 && other != s && IsOneWith(strip, strips[other]))
            {
                next[s] = other;
                follows[other] = true;
            }
        }

        for (int s = 0; oneFace is not null && s < strips.Count; s++)
        {
            if (strips[s].Face > 0)
            {
                Fold(s, false, meeting, first);
                Fold(s, true, meeting, first);
            }
        }

        Lent<int>.GiveBack(meeting);
        Lent<int>.GiveBack(first);
    }

    /// <summary>Notes what a named face goes on with round a bend: a strip of its own, of the same height there, with nothing else at the joint.</summary>
    private void Fold(int s, bool far, int[] meeting, int[] first)
    {
        ref var strip = ref strips[s];
        var (low, high) = far ? (strip.FarLow, strip.FarHigh) : (strip.NearLow, strip.NearHigh);
        if ((far ? next[s] >= 0 : follows[s]) || meeting[low] != 2 || After(low) != high)
        {
            return;
        }

        int entry = first[low] ^ (far ? ~s : s), other = entry < 0 ? ~entry : entry;
        bool rightEnd = far == strip.FacesRight, otherRightEnd = entry < 0 == strips[other].FacesRight;
        var (otherLow, otherHigh) = entry < 0 ? (strips[other].FarLow, strips[other].FarHigh) : (strips[other].NearLow, strips[other].NearHigh);
        if (otherLow == low && otherHigh == high && oneFace!(strips[other].Face, strip.Face) && strips[other].Paint == strip.Paint && rightEnd != otherRightEnd)
        {
            folds[(s, far)] = other;
        }
    }

    /// <summary>Counts the strips along each piece of a joint, and keeps their numbers combined: of two either gives the other.</summary>
    private void Enter(int low, int high, int strip, int[] meeting, int[] first)
    {
        for (int level = low; level < high; level = After(level))
        {
            first[level] = meeting[level]++ == 0 ? strip : first[level] ^ strip;
        }
    }

    private bool IsOneWith(in WallStrip strip, in WallStrip other) =>
        other.NearLow == strip.FarLow && other.NearHigh == strip.FarHigh && strip.ShowsAs(other) && faces.Plan.Line[strip.Edge] == faces.Plan.Line[other.Edge];

    /// <summary>A panel's end has all its corners, and those at which others end beside it.</summary>
    private void NeedEnds(int s)
    {
        ref var strip = ref strips[s];
        if (!follows[s])
        {
            NeedAll(strip.NearLow, strip.NearHigh);
        }

        if (next[s] < 0)
        {
            NeedAll(strip.FarLow, strip.FarHigh);
        }
    }

    private void NeedAll(int low, int high)
    {
        for (int level = low; level < high; level = After(level))
        {
            creases.Need(level);
        }

        creases.Need(high);
    }
}
