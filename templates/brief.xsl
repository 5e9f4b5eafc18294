<?xml version="1.0" encoding="UTF-8"?>
<!-- The crew brief: for someone who was not at the survey. What is built; the day and where nobody goes on
     unsigned; tools; a line a segment in the order of the work; rods, pulling; the diagram. What is true of every job is on the card. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="brief">
    <xsl:call-template name="said"/>
    <div class="blanks who">
      <xsl:call-template name="blanks"><xsl:with-param name="labels" select="concat(key('label', 'leader'), '|', key('label', 'electrician'), '|', key('label', 'operator'), '|', key('label', 'second-hand'), '|', key('label', 'isolation'), '|', key('label', 'date-start'))"/></xsl:call-template>
    </div>
    <p class="small"><xsl:value-of select="key('label', 'who-settles')"/></p>

    <section class="ends">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'two-ends')"/></xsl:element>
      <xsl:apply-templates select="papers/ends/run" mode="brief"/>
    </section>

    <section class="day">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'day')"/></xsl:element>
      <!-- the four kinds of number, told apart by their look on every sheet -->
      <p class="small key"><span>1. <xsl:value-of select="key('label', 'key-step')"/></span><span><span class="hold-number"><xsl:value-of select="key('label', 'hold-letter')"/>1</span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'key-hold')"/></span><span><span class="at">1</span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'key-segment')"/></span><span>!1 <xsl:value-of select="key('label', 'key-caution')"/></span></p>
      <table class="steps">
        <thead><tr><th scope="col"><xsl:value-of select="key('label', 'hold-points')"/></th><th scope="col"><xsl:value-of select="key('label', 'reading')"/></th><th scope="col"><xsl:value-of select="key('label', 'time-initials')"/></th></tr></thead>
        <tbody>
          <xsl:for-each select="papers/day/step">
            <xsl:variable name="step" select="."/>
            <xsl:variable name="number" select="position()"/>
            <xsl:if test="not(@hold)"><tr><th scope="row" colspan="3"><xsl:value-of select="$number"/><xsl:text>. </xsl:text><xsl:call-template name="fill"/></th></tr></xsl:if>
            <!-- what is signed once it is done, a line each -->
            <xsl:for-each select="/plan/papers/holds/hold[contains(concat(', ', $step/@hold, ','), concat(' ', @number, ','))]">
              <tr class="hold"><th scope="row"><xsl:if test="position() = 1"><xsl:value-of select="$number"/><xsl:text>. </xsl:text><xsl:call-template name="fill"><xsl:with-param name="text" select="$step"/></xsl:call-template><xsl:text> </xsl:text></xsl:if><span class="hold-number"><xsl:value-of select="key('label', 'hold-letter')"/><xsl:value-of select="@number"/></span><xsl:text>&#160;</xsl:text><strong><xsl:value-of select="@name"/></strong></th><td><xsl:call-template name="fill"><xsl:with-param name="text" select="@reading"/></xsl:call-template></td><td></td></tr>
            </xsl:for-each>
          </xsl:for-each>
        </tbody>
      </table>
    </section>
    <xsl:apply-templates select="papers/strip" mode="brief"/>

    <section class="tools">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'van')"/></xsl:element>
      <ul class="ticks">
        <li><xsl:call-template name="box"/><span><xsl:value-of select="key('label', 'all-parts')"/></span></li>
        <xsl:for-each select="papers/tools/tool"><xsl:call-template name="tick"/></xsl:for-each>
      </ul>
      <xsl:if test="$paper != 'brief' or $apart"><xsl:comment>pack</xsl:comment><p class="small"><xsl:value-of select="key('label', 'common-practice')"/></p><xsl:comment>all</xsl:comment></xsl:if>
    </section>

    <section class="work">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'stretch-by-stretch')"/></xsl:element>
      <p class="small"><xsl:value-of select="key('label', 'found-different-ring')"/></p>
      <xsl:call-template name="work-table"/>
      <xsl:if test="papers/work/draw or papers/rods">
        <div class="draws">
          <xsl:for-each select="papers/work/draw"><p class="draw"><xsl:call-template name="fill"/></p></xsl:for-each>
          <xsl:if test="papers/rods"><p class="draw"><xsl:value-of select="key('label', 'draw-rods')"/></p></xsl:if>
        </div>
      </xsl:if>
    </section>

    <xsl:if test="papers/mind">
      <section class="minds">
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'this-job')"/></xsl:element>
        <ul><xsl:for-each select="papers/mind"><li><xsl:value-of select="."/></li></xsl:for-each></ul>
      </section>
    </xsl:if>

    <div class="last">
      <xsl:if test="papers/rods">
        <section class="rods">
          <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'earth-rods')"/></xsl:element>
          <ul class="ticks"><xsl:for-each select="papers/rods/do"><xsl:call-template name="tick"/></xsl:for-each></ul>
        </section>
      </xsl:if>
      <xsl:if test="papers/pulling">
        <section class="pulling">
          <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'pulling-plan')"/></xsl:element>
          <p class="small"><xsl:value-of select="key('label', 'hard-pull')"/></p>
          <ul class="ticks"><xsl:for-each select="papers/pulling/do"><xsl:call-template name="tick"/></xsl:for-each></ul>
        </section>
      </xsl:if>
    </div>

    <xsl:if test="$paper = 'brief'"><xsl:comment>paper</xsl:comment><xsl:call-template name="foot"/><xsl:comment>all</xsl:comment></xsl:if>

    <!-- last, so that the sheets before it run on without a gap and it can be hung up alone -->
    <section class="diagram-sheet" id="diagram">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'run-diagram')"/></xsl:element>
      <xsl:call-template name="diagram"/>
    </section>
  </xsl:template>

  <!-- The day in lanes. Every place is a finished number, in millimetres. -->
  <xsl:template match="strip" mode="brief">
    <xsl:variable name="strip" select="."/>
    <section class="strip">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'day-strip')"/></xsl:element>
      <p class="small"><xsl:value-of select="@time"/><xsl:text>. </xsl:text><xsl:value-of select="@chance"/><xsl:text>. </xsl:text><xsl:value-of select="key('label', 'day-strip-note')"/></p>
      <figure class="chart lanes scroll">
        <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{@time}" viewBox="0 0 {@width} {@height}">
          <xsl:for-each select="tick"><line class="hour" x1="{@x}" x2="{@x}" y1="{$strip/@top}" y2="{$strip/@height}"/><text class="hour" x="{@x}" y="3.6"><xsl:value-of select="."/></text></xsl:for-each>
          <xsl:for-each select="lane"><text class="axis" x="{$strip/@label-x}" y="{@y}"><xsl:value-of select="."/></text></xsl:for-each>
          <xsl:for-each select="bar"><rect class="bar {@kind}" x="{@x}" y="{@y}" width="{@width}" height="{@height}"/><text x="{@text-x}" y="{@text-y}"><xsl:value-of select="."/></text></xsl:for-each>
        </svg>
      </figure>
      <ul class="tasks"><xsl:for-each select="task"><li><strong><xsl:value-of select="@number"/></strong><xsl:text> </xsl:text><xsl:value-of select="."/><xsl:text> </xsl:text><xsl:value-of select="@from"/></li></xsl:for-each></ul>
    </section>
  </xsl:template>

  <xsl:template match="run" mode="brief">
    <xsl:variable name="cores" select="core"/>
    <div class="run-ends">
      <xsl:if test="last() &gt; 1 or not(@name = /plan/run/@name)"><!-- of several runs, together too -->
        <p class="run-name"><strong><xsl:value-of select="@name"/></strong><xsl:text>: </xsl:text><xsl:value-of select="@cable"/><xsl:text>.</xsl:text></p>
      </xsl:if>
      <div class="pair">
        <xsl:for-each select="end">
          <xsl:variable name="far" select="position() = 2"/>
          <div class="end">
            <p class="which"><xsl:value-of select="@which"/></p>
            <xsl:for-each select="joined">
              <p class="joined"><span class="joined-what"><xsl:value-of select="@what"/></span><xsl:text> </xsl:text><strong class="{@plate}"><xsl:value-of select="@state"/></strong></p>
              <xsl:if test="not(@told)"><p><xsl:value-of select="."/></p></xsl:if>
            </xsl:for-each>
            <xsl:if test="$cores">
              <ul class="make-off">
                <xsl:for-each select="$cores">
                  <li><span class="wire {@wire}" aria-hidden="true"></span><span><strong><xsl:value-of select="@colour"/></strong>
                    <xsl:if test="@sleeved"><xsl:text>, </xsl:text><xsl:value-of select="key('label', 'sleeved')"/><xsl:text> </xsl:text><strong><xsl:value-of select="@sleeve"/></strong></xsl:if>
                    <xsl:text> &#8594; </xsl:text>
                    <xsl:choose><xsl:when test="$far"><xsl:value-of select="@far"/></xsl:when><xsl:otherwise><xsl:value-of select="@supply"/></xsl:otherwise></xsl:choose></span></li>
                </xsl:for-each>
              </ul>
            </xsl:if>
            <p>
              <xsl:value-of select="@into"/><xsl:text>, </xsl:text><xsl:value-of select="@place"/>
              <xsl:text>; </xsl:text><xsl:value-of select="key('label', 'leave-tail')"/><xsl:text> </xsl:text><xsl:value-of select="@tail"/>
              <xsl:if test="@loop"><xsl:text>, </xsl:text><xsl:value-of select="key('label', 'and-loop')"/><xsl:text> </xsl:text><xsl:value-of select="@loop"/></xsl:if>
              <xsl:text>.</xsl:text>
              <xsl:if test="@room and not(@room = following-sibling::end/@room or @room = preceding-sibling::end/@room)"><xsl:text> </xsl:text><xsl:value-of select="@room"/></xsl:if>
            </p>
            <ul class="ticks"><xsl:for-each select="do"><xsl:call-template name="tick"/></xsl:for-each></ul>
          </div>
        </xsl:for-each>
      </div>
      <xsl:if test="end[1]/@room = end[2]/@room"><p class="small"><xsl:value-of select="key('label', 'both-ends')"/><xsl:text>: </xsl:text><xsl:value-of select="end[1]/@room"/></p></xsl:if>
    </div>
  </xsl:template>

  <xsl:template name="work-table">
    <xsl:variable name="count" select="key('label', 'count-size')"/>
    <xsl:variable name="with" select="key('label', 'with-into')"/>
    <xsl:variable name="watch" select="key('label', 'watch')"/>
    <xsl:variable name="different" select="key('label', 'found-different')"/>
    <table class="lines">
      <thead><tr>
        <th scope="col"><xsl:value-of select="key('label', 'stretch')"/></th>
        <th scope="col"><xsl:value-of select="$count"/></th>
        <th scope="col"><xsl:value-of select="$with"/></th>
        <th scope="col"><xsl:value-of select="$watch"/></th>
        <th scope="col"><xsl:value-of select="$different"/></th>
      </tr></thead>
      <xsl:for-each select="papers/work/group">
        <tbody>
          <tr class="trade"><th colspan="5" scope="rowgroup"><xsl:value-of select="@name"/><xsl:for-each select="do"><span class="common"><xsl:text> </xsl:text><xsl:call-template name="fill"/></span></xsl:for-each></th></tr>
          <xsl:for-each select="line">
            <tr>
              <th scope="row"><xsl:call-template name="box"/><xsl:text> </xsl:text><span class="number"><xsl:value-of select="@number"/></span><xsl:text> </xsl:text><span class="name"><xsl:value-of select="@name"/></span><xsl:text> </xsl:text><span class="length"><xsl:value-of select="@length"/></span></th>
              <td class="count" data-label="{$count}">
                <xsl:for-each select="do[@kind = 'count']"><p class="strong"><xsl:call-template name="fill"/><xsl:if test="position() != last() or ../do[@kind = 'first']">;</xsl:if></p></xsl:for-each>
                <xsl:for-each select="do[@kind = 'first']"><p><xsl:call-template name="fill"/><xsl:if test="position() != last()">;</xsl:if></p></xsl:for-each>
              </td>
              <td data-label="{$with}">
                <xsl:for-each select="do[@kind = 'bend']"><p class="strong"><xsl:call-template name="fill"/><xsl:if test="(position() != last() or ../do[@kind = 'with']) and substring(., string-length(.)) != '.'">;</xsl:if></p></xsl:for-each>
                <xsl:for-each select="do[@kind = 'with']"><p><xsl:call-template name="fill"/><xsl:if test="position() != last() and substring(., string-length(.)) != '.'">;</xsl:if></p></xsl:for-each>
              </td>
              <td data-label="{$watch}">
                <xsl:for-each select="do[@kind = 'warning']"><p><strong><xsl:value-of select="key('label', 'warning')"/><xsl:text>: </xsl:text></strong><xsl:value-of select="."/></p></xsl:for-each>
                <xsl:for-each select="do[@kind = 'watch']"><p><xsl:call-template name="fill"/></p></xsl:for-each>
                <xsl:for-each select="do[@kind = 'note']"><p class="note"><xsl:value-of select="key('label', 'from-survey')"/><xsl:text>: </xsl:text><xsl:value-of select="."/></p></xsl:for-each>
              </td>
              <td class="different" data-label="{$different}"></td>
            </tr>
          </xsl:for-each>
        </tbody>
      </xsl:for-each>
    </table>
  </xsl:template>

  <xsl:template name="tick">
    <li class="{@kind}"><xsl:if test="not(@kind = 'mind' or @kind = 'pull')"><xsl:call-template name="box"/></xsl:if><span><xsl:call-template name="fill"/></span></li>
  </xsl:template>
</xsl:stylesheet>
