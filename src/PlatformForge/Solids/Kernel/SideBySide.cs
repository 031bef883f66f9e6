using System.Runtime.ExceptionServices;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// Shares the steps of one solid out between two threads. A step has a fixed number of parts, each of which writes what nobody else looks at; what they
/// found is put together in the order of parts, so nothing depends on which thread did what. Where other solids are being raised at the same time, their
/// threads have the processors: then parts are done one after another.
/// </summary>
internal sealed class SideBySide : IDisposable
{
    // Less work than this, in items of some ten nanoseconds, is done before another thread would have woken up.
    private const int LeastWork = 2000;

    private static int atWork;

    private readonly int threads;

    /// <param name="threads">One or two; less than one for two where no other solid is being raised.</param>
    public SideBySide(int threads = 0)
    {
        this.threads = Environment.ProcessorCount == 1 ? 1 : threads;
        Interlocked.Increment(ref atWork);
    }

    /// <summary>Whether two parts may be done at once just now.</summary>
    public bool IsShared => threads > 1 || (threads < 1 && Volatile.Read(ref atWork) == 1);

    public void Dispose() => Interlocked.Decrement(ref atWork);

    /// <summary>Into how many parts work of a number of items is best put.</summary>
    public int Parts(int items, int most) => items >= LeastWork && IsShared ? most : 1;

    /// <summary>Does all parts, the first ones first.</summary>
    public void Run(int parts, Action<int> part)
    {
        if (parts < 2 || !IsShared)
        {
            for (int i = 0; i < parts; i++)
            {
                part(i);
            }

            return;
        }

        int taken = -1;
        try
        {
            Parallel.Invoke(TakeParts, TakeParts);
        }
        catch (AggregateException faults)
        {
            ExceptionDispatchInfo.Throw(faults.InnerExceptions[0]);
        }

        void TakeParts()
        {
            for (int i = Interlocked.Increment(ref taken); i < parts; i = Interlocked.Increment(ref taken))
            {
                part(i);
            }
        }
    }

    /// <summary>The items of a part: from where to where of a number of them.</summary>
    public static (int From, int End) Range(int part, int parts, int items) =>
        ((int)((long)items * part / parts), (int)((long)items * (part + 1) / parts));
}
