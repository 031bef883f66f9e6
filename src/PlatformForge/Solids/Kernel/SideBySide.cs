using System.Runtime.ExceptionServices;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// Shares the steps of one solid out between two threads. A step has a fixed number of parts, each of which writes what nobody else looks at; what they
/// found is put together in the order of parts, so nothing depends on which thread did what. Where other solids are being raised at the same time, their
/// threads have the processors: then parts are done one after another.
/// </summary>
internal sealed class SideBySide : IDisposable
{
    // Smaller solids are done before another thread would be awake.
    private const int LeastBlocks = 200;

    // Less work than this, in items of some ten nanoseconds, is not worth putting together again.
    private const int LeastWork = 1000;

    private static int atWork;

    private readonly int threads;
    private volatile SharedStep? current;
    private volatile bool isHelped, isOver;

    /// <param name="threads">One or two; nought for two where no other solid is being raised.</param>
    /// <param name="blocks">Of how many blocks the solid is made.</param>
    public SideBySide(int threads, int blocks)
    {
        this.threads = Environment.ProcessorCount > 1 ? threads : 1;
        bool isAlone = Interlocked.Increment(ref atWork) == 1;
        if (this.threads > 1 || (this.threads < 1 && isAlone && blocks >= LeastBlocks))
        {
            HelpingThread.Call(this);
        }
    }

    // The other thread is awake and at our service; where two are asked for, parts are made even if it is late.
    private bool IsShared => threads > 1 || isHelped;

    private bool IsWanted => !isOver && (threads > 1 || Volatile.Read(ref atWork) == 1);

    public void Dispose()
    {
        isOver = true;
        Interlocked.Decrement(ref atWork);
    }

    /// <summary>Into how many parts work of a number of items is best put; as many as may be where two threads are asked for.</summary>
    public int Parts(int items, int most) => threads > 1 || (items >= LeastWork && IsShared) ? most : 1;

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

        var step = new SharedStep(parts, part);
        current = step;
        step.TakeParts();
        step.Wait();
        current = null;
    }

    /// <summary>Does all steps, the first ones first; none of them looks at what another one writes.</summary>
    public void Run(ReadOnlySpan<Action> steps)
    {
        var all = steps.ToArray();
        Run(all.Length, i => all[i]());
    }

    /// <summary>Helps on the calling thread as long as there is something to help with. Between two steps it stays awake: waking up takes longer than most
    /// steps do.</summary>
    public void Help()
    {
        isHelped = true;
        SharedStep? done = null;
        var idle = default(SpinWait);
        while (IsWanted)
        {
            if (current is { } step && step != done)
            {
                step.TakeParts();
                done = step;
                idle = default;
            }
            else
            {
                idle.SpinOnce(sleep1Threshold: -1);
            }
        }

        isHelped = false;
    }

    /// <summary>The items of a part: from where to where of a number of them.</summary>
    public static (int From, int End) Range(int part, int parts, int items) =>
        ((int)((long)items * part / parts), (int)((long)items * (part + 1) / parts));

    /// <summary>A step and how far it has come.</summary>
    private sealed class SharedStep(int parts, Action<int> part)
    {
        private int taken = -1, finished;
        private Exception? fault;

        public void TakeParts()
        {
            for (int i = Interlocked.Increment(ref taken); i < parts; i = Interlocked.Increment(ref taken))
            {
                try
                {
                    part(i);
                }
                catch (Exception e) when (Note(e))
                {
                }

                Interlocked.Increment(ref finished);
            }
        }

        /// <summary>Waits for the other thread's last part.</summary>
        public void Wait()
        {
            var spin = default(SpinWait);
            while (Volatile.Read(ref finished) < parts)
            {
                spin.SpinOnce(sleep1Threshold: -1);
            }

            if (fault is { } e)
            {
                ExceptionDispatchInfo.Throw(e);
            }
        }

        private bool Note(Exception e)
        {
            Interlocked.CompareExchange(ref fault, e, null);
            return true;
        }
    }
}
